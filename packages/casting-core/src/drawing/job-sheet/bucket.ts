import type { Point } from "../../geometry/types.js";
import type { JobContainer } from "../../job/types.js";
import type { Plan } from "../../plan/types.js";
import { roughLength } from "../../units/figure-text.js";
import { line, type Shape, type Sheet, text } from "../sheet.js";
import { picture } from "./frame.js";

/** The container with its two marks, to scale as far as it is known; nothing without a container. */
export function bucketPicture({ pour, job }: Plan): Sheet | undefined {
  const { container } = job;
  const batch = pour.batches[0];
  if (!container || batch?.waterMark === undefined || batch.mixMark === undefined) return undefined;
  const { height } = container;
  const wall = wallOf(container);
  const size = Math.max(5, height / 18);
  const side = 16 * size;
  const widest = Math.max(...wall.map(([across]) => across));
  const centre = size + widest / 2;
  const width = widest + size + side;
  const at = (share: number, up: number): Point => [centre + (share * acrossAt(wall, up)) / 2, size + height - up];
  const level = (up: number, words: string, below: boolean): Shape[] => [
    line(at(-1, up), at(1, up), { line: 0.8 }),
    line(at(1, up), [centre + widest / 2 + size, at(1, up)[1]], { line: 0.3 }),
    text([centre + widest / 2 + 1.4 * size, at(1, up)[1] + (below ? 0.9 : 0.1) * size], words, size),
  ];
  const mm = (value: number) => roughLength(value, job.units);
  return picture(
    "bucket",
    { width, height: height + 2 * size },
    `The container from the side, ${container.shape === "marks" ? "heights to scale, its width not known" : "to scale"}, with its two marks.`,
    [
      {
        id: "bucket-lines",
        shapes: [
          {
            kind: "polyline",
            points: [
              ...[...wall].reverse().map(([across, up]): Point => [centre - across / 2, size + height - up]),
              ...wall.map(([across, up]): Point => [centre + across / 2, size + height - up]),
            ],
            style: { line: 1 },
          },
          ...level(batch.waterMark, `water ${mm(batch.waterMark)}`, true),
          ...level(batch.mixMark, `mix ${mm(batch.mixMark)}`, false),
        ],
      },
    ],
  );
}

/** Inside width of a container at each height where its wall bends, from the floor up; of marks only the heights are known. */
function wallOf(container: JobContainer): [across: number, up: number][] {
  const { height } = container;
  const straight = (bottom: number, top: number): [number, number][] => [
    [bottom, 0],
    [top, height],
  ];
  switch (container.shape) {
    case "round":
      return straight(container.diameter, container.diameter);
    case "tapered":
      return straight(container.bottom, container.top);
    case "box":
      return straight(container.length, container.length);
    case "marks":
      return straight(height, height);
    case "stacked": {
      let floor = 0;
      return container.sections.flatMap(({ bottom, top, height: tall }): [number, number][] => {
        const from = floor;
        floor += tall;
        return [
          [bottom, from],
          [top, floor],
        ];
      });
    }
  }
}

function acrossAt(wall: readonly (readonly [number, number])[], up: number): number {
  const n = Math.max(
    1,
    wall.findIndex(([, height]) => height >= up),
  );
  const [[from, low], [to, high]] = [wall[n - 1]!, wall[n]!];
  return high > low ? from + ((to - from) * (up - low)) / (high - low) : to;
}
