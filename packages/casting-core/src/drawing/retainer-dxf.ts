import { Colors, point3d } from "@tarikjabiri/dxf";
import type { Plan } from "../plan/types.js";
import { dxfInMillimetres } from "./dxf-file.js";
import { holeCentres, slotSides } from "./retainer.js";

/**
 * The retainer as a DXF drawing (AC1021, millimetres), from above. Layers: `RING`, `SLOTS`, `HOLES`, `BLANK` (dashed, not
 * to be cut), `MARKS`. Nothing for a job without a set-up.
 */
export function retainerDxf({ job, setup, blank }: Pick<Plan, "job" | "setup" | "blank">): string | undefined {
  if (!job.setup.given) return undefined;
  const { inside, outside, holes } = setup.retainer;
  const { dxf, onto } = dxfInMillimetres();
  const centre = point3d(0, 0);
  onto("RING", Colors.White);
  dxf.addCircle(centre, inside / 2);
  dxf.addCircle(centre, outside / 2);
  onto("SLOTS", Colors.Red);
  for (const [from, to] of slotSides(setup.retainer)) dxf.addLine(point3d(...from), point3d(...to));
  onto("HOLES", Colors.Blue);
  for (const place of holeCentres(setup.retainer)) dxf.addCircle(point3d(...place), holes.diameter / 2);
  onto("BLANK", Colors.Yellow, "DASHED");
  dxf.addCircle(centre, blank.diameter / 2);
  onto("MARKS", Colors.Green);
  dxf.addLine(point3d(-5, 0), point3d(5, 0));
  dxf.addLine(point3d(0, -5), point3d(0, 5));
  return dxf.stringify();
}
