import type { Point } from "../geometry/types.js";
import type { Plan } from "../plan/types.js";
import type { Retainer } from "../setup/types.js";
import { cos, PI, sin } from "../trig.js";
import { atMost } from "../units/bound-text.js";
import { closeLength } from "../units/figure-text.js";
import { BLOCK_HEIGHT, BLOCK_WIDTH, block, MARGIN } from "./block.js";
import { circle, FIRM, line, onSheet, type Shape, type Sheet, THIN } from "./sheet.js";

/**
 * The retainer that holds the blank on the turntable, from above: ring, drain slots, mounting holes, the blank in it.
 * Nothing for a job without a set-up.
 */
export function retainerSheet(plan: Plan): Sheet | undefined {
  if (!plan.job.setup.given) return undefined;
  const { retainer } = plan.setup;
  const { job, blank } = plan;
  const across = retainer.outside + 2 * MARGIN + 4;
  const width = Math.max(across, BLOCK_WIDTH);
  const centre: Point = [width / 2, across / 2];
  const mm = (value: number) => closeLength(value, job.units);
  const at = (point: Point) => onSheet({ x: centre[0], y: centre[1], mirrored: false }, point);
  const { slots, holes } = retainer;
  const shapes: Shape[] = [circle(centre, retainer.outside / 2, FIRM), circle(centre, retainer.inside / 2, FIRM)];
  for (const [from, to] of slotSides(retainer)) shapes.push(line(at(from), at(to), FIRM));
  for (const [x, y] of holeCentres(retainer).map(at)) {
    shapes.push(circle([x, y], holes.diameter / 2, FIRM), line([x - 2, y], [x + 2, y]), line([x, y - 2], [x, y + 2]));
  }
  shapes.push(
    circle(centre, blank.diameter / 2, { line: 0.25, dash: [3, 2] }),
    ...[[4, 0] as const, [0, 4] as const].map(
      ([dx, dy]): Shape => ({
        kind: "polyline",
        points: [
          [centre[0] - dx, centre[1] - dy],
          [centre[0] + dx, centre[1] + dy],
        ],
        style: THIN,
        aid: true,
      }),
    ),
  );
  const { labels, check, facts } = block(plan, across, width, [
    "RETAINER for the turntable, seen from above: it keeps the blank in the middle and never pinches it.",
    `Inside ${mm(retainer.inside)}, outside ${mm(retainer.outside)}, ${atMost(retainer.height, job.units)} high with ${mm(retainer.cushion)} of cushion; the blank (dashed) is loose by ${mm(retainer.clearance)} all round, off centre by at most that.`,
    `${slots.count} slots of ${mm(slots.width)} from floor to top for water and grit; ${holes.count} holes of ${mm(holes.diameter)} on a circle of ${mm(holes.circle)}.`,
  ]);
  return {
    name: "retainer",
    width,
    height: across + BLOCK_HEIGHT + MARGIN,
    caption: "retainer for the turntable",
    facts,
    bodyHeight: across,
    groups: [{ id: "marks", shapes }, { id: "labels", shapes: labels }, check],
  };
}

/** Both sides of each slot from the inner circle to the outer one, about the ring's centre, y up, seen from above. */
export function slotSides({ inside, outside, slots }: Retainer): [from: Point, to: Point][] {
  const half = slots.width / 2;
  // Where a line `half` beside the slot's middle meets a circle of this radius.
  const along = (radius: number) => Math.sqrt(radius * radius - half * half);
  return Array.from({ length: slots.count }, (_, n) => {
    const [c, s] = [cos((2 * PI * n) / slots.count), sin((2 * PI * n) / slots.count)];
    return [half, -half].map((side): [Point, Point] => {
      const at = (far: number): Point => [far * c - side * s, far * s + side * c];
      return [at(along(inside / 2)), at(along(outside / 2))];
    });
  }).flat();
}

/** The holes' centres, each half way between two slots. */
export function holeCentres({ holes }: Retainer): Point[] {
  return Array.from({ length: holes.count }, (_, n): Point => {
    const angle = (2 * PI * (n + 0.5)) / holes.count;
    return [(holes.circle / 2) * cos(angle), (holes.circle / 2) * sin(angle)];
  });
}
