import { DxfWriter, Units } from "@tarikjabiri/dxf";

/** An empty DXF drawing in millimetres, and a way to go on drawing on a new layer. */
export function dxfInMillimetres(): { dxf: DxfWriter; onto: (name: string, color: number, lineType?: string) => void } {
  const dxf = new DxfWriter();
  dxf.setUnits(Units.Millimeters);
  dxf.addLType("DASHED", "Dashed _ _ _", [4, -2]);
  const onto = (name: string, color: number, lineType = "Continuous"): void => {
    dxf.addLayer(name, color, lineType);
    dxf.setCurrentLayerName(name);
  };
  return { dxf, onto };
}
