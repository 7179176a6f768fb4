import type { Point } from "../../geometry/types.js";
import type { Plan } from "../../plan/types.js";
import { fineLength, roughLength } from "../../units/figure-text.js";
import { textWidth } from "../letters.js";
import { FIRM, line, type Shape, type Sheet, text } from "../sheet.js";
import { picture } from "./frame.js";

/** Predicted removal over the mirror's radius, and what the target asks for, dashed. */
export function wearPicture({ setup, blank, job }: Plan): Sheet {
  const [width, height, left, top, bottom, size] = [300, 140, 26, 16, 110, 7];
  const { zones } = setup.wear;
  const most = Math.max(1, ...zones.map(({ removal, wanted }) => Math.max(removal, wanted ?? 0))) * 1.05;
  const at = (radius: number, value: number): Point => [
    left + ((width - left - 8) * radius) / (blank.diameter / 2),
    bottom - ((bottom - top) * value) / most,
  ];
  const wanted = zones.flatMap((zone) => (zone.wanted === undefined ? [] : [at(zone.at, zone.wanted)]));
  const ticks = [0, 0.25, 0.5, 0.75, 1].map((share) => (share * blank.diameter) / 2);
  return picture("wear", { width, height }, "Predicted removal by zone of the mirror.", [
    {
      id: "wear-axes",
      shapes: [
        { kind: "polyline", points: [at(0, most), at(0, 0), at(blank.diameter / 2, 0)], style: FIRM },
        line(at(0, 1), at(blank.diameter / 2, 1), { line: 0.3, ink: "grey" }),
        ...ticks.flatMap((radius): Shape[] => [
          line(at(radius, 0), [at(radius, 0)[0], bottom + 3]),
          text(
            [at(radius, 0)[0], bottom + 4 + size],
            roughLength(radius, job.units),
            size,
            radius === 0 ? "start" : radius * 2 === blank.diameter ? "end" : "middle",
          ),
        ]),
        text([left - 2, at(0, 1)[1] + 0.36 * size], "1", size, "end"),
        text([2, size + 1], "removal, mean 1", size),
        text(
          [left + (width - left - 8) / 2, bottom + 4 + 2.4 * size],
          "distance from the mirror's centre",
          size,
          "middle",
        ),
        text([left - 2, bottom], "0", size, "end"),
      ],
    },
    {
      id: "wear-lines",
      shapes: [
        { kind: "polyline", points: zones.map(({ at: radius, removal }) => at(radius, removal)), style: { line: 1 } },
        ...(wanted.length > 1
          ? [{ kind: "polyline", points: wanted, style: { line: 0.7, dash: [4, 3] } } as Shape]
          : []),
      ],
    },
  ]);
}

/** Factors that a section's height may be drawn larger by. */
const FACTORS = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000, 20_000, 50_000, 100_000];

/**
 * Section of the glass that stands between the curve now and the curve wanted, measured from the wanted curve, its height
 * drawn larger by a factor that the caption states; nothing without a target.
 */
export function removalPicture({ setup, blank, job }: Plan): Sheet | undefined {
  const { removal } = setup;
  if (!removal || removal.deepest === 0) return undefined;
  const half = blank.diameter / 2;
  const size = blank.diameter / 42;
  const tallest = blank.diameter / 8;
  const depth = removal.deepest / 1000;
  const factor = [...FACTORS].reverse().find((each) => each * depth <= tallest) ?? 1;
  const centre = half + 3 * size;
  const base = 3.4 * size + tallest;
  const at = (x: number, up: number): Point => [centre + x, base - up * factor];
  const rim = removal.zones.map((zone) => ({ x: zone.at, up: zone.depth / 1000 }));
  const step = rim.length > 1 ? rim[1]!.x - rim[0]!.x : 0;
  const top = [...[...rim].reverse().map(({ x, up }) => at(-x, up)), ...rim.slice(1).map(({ x, up }) => at(x, up))];
  const dots = rim.filter((_, n) => n % 6 === 0);
  // A label stands above the curve over its whole width, not only over its own place.
  const above = (x: number, words: string): number => {
    const half = textWidth(words, size) / 2 + 0.3 * size;
    const under = rim.filter((other) => Math.abs(other.x - x) <= half + step);
    return Math.min(...under.map((other) => at(other.x, other.up)[1])) - 0.5 * size;
  };
  return picture(
    "removal",
    { width: 2 * centre, height: base + 3.2 * size },
    `Section of the glass to remove, above the curve wanted drawn flat; heights ${factor} times too large.`,
    [
      {
        id: "removal-glass",
        shapes: [
          {
            kind: "polygon",
            points: [at(-half, 0), at(half, 0), ...top.reverse()],
            style: { line: 0.5, fill: "pale" },
          },
          line(at(-half, 0), at(half, 0), FIRM),
        ],
      },
      {
        id: "removal-words",
        shapes: dots.flatMap(({ x, up }): Shape[] => [
          line(at(x, 0), [at(x, 0)[0], base + 0.6 * size]),
          text([at(x, 0)[0], base + 1.7 * size], roughLength(x, job.units), size, "middle"),
          text([at(x, up)[0], above(x, fineLength(up, job.units))], fineLength(up, job.units), size, "middle"),
        ]),
      },
    ],
  );
}
