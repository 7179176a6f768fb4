import Flatbush from "flatbush";
import { pointToOutline } from "../geometry/distance.js";
import { convexContains } from "../geometry/polygon.js";
import type { Point } from "../geometry/types.js";
import type { Plan } from "../plan/types.js";
import { hypot, sinCos, TAU } from "../trig.js";
import { onSheet, type Shape, type Style, type View } from "./sheet.js";

/** Faint: they help the eye to find a sector, and are no line to lay by. */
const FAINT: Style = { line: 0.2, ink: "grey" };
/** Step along a guide, and how far it keeps from pieces and their numbers, mm. */
const STEP = 0.25;
const CLEAR = 0.6;
/** Shorter bits are left out, mm. */
const SHORTEST = 1.5;

/** Sector lines and light rings between the pieces, as many as the job asks for; they never cross a piece. */
export function guideLines({ job, tool, layout }: Pick<Plan, "job" | "tool" | "layout">, view: View): Shape[] {
  const { sectors, rings } = job.print.guides;
  const edge = tool.diameter / 2;
  const inner = edge - tool.rim;
  const ways: Point[][] = [];
  for (let n = 0; n < sectors; n++) {
    const [s, c] = sinCos((TAU * n) / sectors);
    // From the top, where the index stands, clockwise.
    ways.push(points(inner - 4, (at) => [(4 + at) * s, (4 + at) * c]));
  }
  for (let n = 1; n <= rings; n++) {
    const radius = (inner * n) / (rings + 1);
    ways.push(
      points(TAU * radius, (at) => {
        const [s, c] = sinCos(at / radius);
        return [radius * s, radius * c];
      }),
    );
  }
  if (ways.length === 0) return [];
  const taken = takenBy(layout.pieces);
  return ways
    .flatMap((way) => runs(way, taken))
    .map((run) => ({
      kind: "polyline",
      points: run.map((point) => onSheet(view, point)),
      style: FAINT,
    }));
}

function points(length: number, at: (along: number) => Point): Point[] {
  const count = Math.max(1, Math.ceil(length / STEP));
  return Array.from({ length: count + 1 }, (_, n) => at((length * n) / count));
}

/** The parts of a way whose points are free, long enough to be seen. */
function runs(way: readonly Point[], taken: (point: Point) => boolean): Point[][] {
  const found: Point[][] = [[]];
  for (const point of way) {
    if (taken(point)) found.push([]);
    else found.at(-1)!.push(point);
  }
  return found.filter((run) => run.length * STEP > SHORTEST);
}

/** Whether a point lies in a piece or too near to one. */
function takenBy(pieces: Plan["layout"]["pieces"]): (point: Point) => boolean {
  const index = new Flatbush(pieces.length);
  for (const { outline } of pieces) {
    const [xs, ys] = [outline.map(([x]) => x), outline.map(([, y]) => y)];
    index.add(Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys));
  }
  index.finish();
  return ([x, y]) =>
    index.search(x - CLEAR, y - CLEAR, x + CLEAR, y + CLEAR).some((n) => {
      const piece = pieces[n]!;
      if (piece.radius !== undefined) return hypot(x - piece.x, y - piece.y) < piece.radius + CLEAR;
      return convexContains(piece.outline, [x, y]) || pointToOutline([x, y], piece.outline) < CLEAR;
    });
}
