import { Colors, point3d } from "@tarikjabiri/dxf";
import type { Plan } from "../plan/types.js";
import { cos, PI, sin } from "../trig.js";
import { dxfInMillimetres } from "./dxf-file.js";

/**
 * The retainer as a DXF drawing (AC1021, millimetres), from above. Layers: `RING`, `SLOTS`, `HOLES`, `BLANK` (dashed, not
 * to be cut), `MARKS`. Nothing for a job without a set-up.
 */
export function retainerDxf({ job, setup, blank }: Pick<Plan, "job" | "setup" | "blank">): string | undefined {
  if (!job.setup.given) return undefined;
  const { inside, outside, slots, holes } = setup.retainer;
  const { dxf, onto } = dxfInMillimetres();
  const centre = point3d(0, 0);
  onto("RING", Colors.White);
  dxf.addCircle(centre, inside / 2);
  dxf.addCircle(centre, outside / 2);
  onto("SLOTS", Colors.Red);
  const half = slots.width / 2;
  // Where a line `half` beside the slot's middle meets a circle of this radius.
  const along = (radius: number) => Math.sqrt(radius * radius - half * half);
  for (let n = 0; n < slots.count; n++) {
    const [c, s] = [cos((2 * PI * n) / slots.count), sin((2 * PI * n) / slots.count)];
    for (const side of [half, -half]) {
      const at = (far: number) => point3d(far * c - side * s, far * s + side * c);
      dxf.addLine(at(along(inside / 2)), at(along(outside / 2)));
    }
  }
  onto("HOLES", Colors.Blue);
  for (let n = 0; n < holes.count; n++) {
    const angle = (2 * PI * (n + 0.5)) / holes.count;
    dxf.addCircle(point3d((holes.circle / 2) * cos(angle), (holes.circle / 2) * sin(angle)), holes.diameter / 2);
  }
  onto("BLANK", Colors.Yellow, "DASHED");
  dxf.addCircle(centre, blank.diameter / 2);
  onto("MARKS", Colors.Green);
  dxf.addLine(point3d(-5, 0), point3d(5, 0));
  dxf.addLine(point3d(0, -5), point3d(0, 5));
  return dxf.stringify();
}
