import type { Point } from "../geometry/types.js";
import { inkOf, type Rect, textBox } from "./ink.js";
import { floatsIn, openLabels } from "./labels.js";
import { type Shape, text } from "./sheet.js";

/** Width of the leaders and radius of the dot at the start, mm. */
const WIDTH = 0.2;
const DOT = 0.55;

/**
 * For each cut a dot where it begins, and its number with a leader that ends in the dot:
 * clear of every line and other number, and nearer to its own cut than to any other where there is such a place.
 * `walls` are lines that a leader may not cross, `lines` all others that a number must not lie on, `arrows` the cuts' own:
 * a leader keeps off its cut's where it can. From the `index`, its stroke and its word, both keep well away.
 */
export function cutNumbers(
  cuts: readonly (readonly Point[])[],
  walls: readonly Shape[],
  lines: readonly Shape[],
  arrows: readonly Shape[],
  [stroke, word]: readonly [stroke: Shape, word: Shape],
): { leaders: Shape[]; numbers: Shape[] } {
  const shapes = [...walls, stroke, ...lines, ...arrows];
  const labels = openLabels([...cuts, ...shapes.map((shape) => inkOf(shape).points)]);
  labels.drawStrokes();
  const boxes = cuts.map((_, n) => textBox(text([0, 0], String(n + 1), 1)));
  labels.openNumbers(cuts.length, cuts.length + walls.length + 1, boxes[0]?.height ?? 0, DOT);
  floatsIn(labels, labels.wide, cuts.length).set(boxes.map(({ width }) => width));
  floatsIn(labels, labels.index, 8).set([stroke, word].flatMap((shape) => numbersOf(inkOf(shape).bounds)));
  labels.placeNumbers();
  const taken = floatsIn(labels, labels.taken, 7 * cuts.length);
  const leaders: Shape[] = [];
  const numbers: Shape[] = [];
  cuts.forEach(([start], n) => {
    const [size, x, y, width, height, endX, endY] = [...taken.subarray(7 * n, 7 * n + 7)] as Taken;
    leaders.push(
      { kind: "polyline", points: [start!, [endX, endY]], style: { line: WIDTH } },
      { kind: "circle", centre: start!, radius: DOT, style: { line: 0, fill: "black" } },
    );
    numbers.push(text([x + width / 2, y + height], String(n + 1), size, "middle"));
  });
  return { leaders, numbers };
}

/** What a number takes: its size, its box, where its leader ends. */
type Taken = [size: number, x: number, y: number, width: number, height: number, endX: number, endY: number];

function numbersOf({ x, y, width, height }: Rect): number[] {
  return [x, y, width, height];
}
