import type { Outline, Point } from "../../geometry/types.js";
import type { JobContainer } from "../../job/types.js";
import { pieceKinds } from "../../pieces/kinds.js";
import type { Plan } from "../../plan/types.js";
import { belowGlass } from "../../pour/dam.js";
import { thicknessTaken } from "../../setup/retainer.js";
import { roughLength } from "../../units/figure-text.js";
import { FIRM, line, rectangle, type Shape, type Sheet, text } from "../sheet.js";
import { picture } from "./frame.js";

/** A section through glass and mold on the tool's axis, to scale, with its heights. */
export function sectionPicture({ blank, tool, pour, job, layout }: Plan): Sheet {
  const half = blank.diameter / 2;
  const edge = tool.diameter / 2;
  const depth = blank.curve === "convex" ? -1 : 1;
  const size = Math.max(4, blank.diameter / 38);
  const side = 12 * size;
  const projecting = Math.max(0, pour.socket?.projecting ?? 0);
  const top = Math.max(pour.dam.height, pour.fill.edge + projecting) + 3 * size + Math.max(0, blank.sagitta);
  const width = blank.diameter + 2 * side;
  const centre = width / 2;
  // Heights count from the glass at the tool's edge, as in the plan.
  const at = (x: number, up: number): Point => [centre + x, top - up];
  const surface = (x: number): number => {
    const radius = blank.curveRadius;
    if (radius === undefined) return 0;
    const sag = (r: number) => (r * r) / (radius + Math.sqrt(radius * radius - r * r));
    return depth * (sag(x) - sag(edge));
  };
  const along = (to: number): Point[] =>
    Array.from({ length: 41 }, (_, n) => {
      const x = -to + (2 * to * n) / 40;
      return at(x, surface(x));
    });
  // The thickness is that of the edge; what there is of glass is shown where a deep hollow leaves none.
  const thickness = job.blank.thickness ?? thicknessTaken(job.blank);
  const floor = Math.min(surface(half) - thickness, surface(0) - 1);
  const height = top - floor + 3 * size;
  const { edge: fill } = pour.fill;
  // surface(edge) is 0: the dam stands there, or reaches down the blank's side.
  const below = belowGlass(pour.dam, job.blank);
  const kinds = pieceKinds(job);
  const mm = (value: number) => roughLength(value, job.units);
  const socket = pour.socket;
  const label = (words: string, up: number): Shape[] => [
    line(at(edge + 2, up), at(half + size, up), { line: 0.3 }),
    text([centre + half + 1.3 * size, top - up + 0.36 * size], words, size),
  ];
  return picture(
    "section",
    { width, height },
    "Section on the axis, to scale: glass below, pieces on it, plaster over them, dam round them.",
    [
      {
        id: "section-glass",
        shapes: [
          {
            kind: "polygon",
            points: [at(-half, floor), at(half, floor), ...along(half).reverse()],
            style: { line: 0.4, fill: "pale" },
          },
        ],
      },
      {
        id: "section-tool",
        shapes: [
          { kind: "polygon", points: [...along(edge), at(edge, fill), at(-edge, fill)], style: FIRM },
          ...layout.pieces.flatMap(({ outline, kind }): Shape[] => {
            const cut = cutByAxis(outline);
            if (!cut) return [];
            const [from, to] = cut;
            const { thickness } = kinds[kind]!;
            const foot = surface((from + to) / 2);
            return [rectangle(at(from, foot + thickness), to - from, thickness, { line: 0.3, fill: "grey" })];
          }),
          ...(socket && job.socket
            ? [
                rectangle(
                  at(-job.socket.diameter / 2, surface(0) + socket.foot + job.socket.length),
                  job.socket.diameter,
                  job.socket.length,
                  {
                    line: 0.4,
                    fill: "white",
                  },
                ),
              ]
            : []),
          line(at(-edge, -below), at(-edge, pour.dam.height - below), FIRM),
          line(at(edge, -below), at(edge, pour.dam.height - below), FIRM),
        ],
      },
      {
        id: "section-words",
        shapes: [
          ...label(`fill ${mm(fill)}`, fill),
          ...label("glass 0", 0),
          ...label(`dam ${mm(pour.dam.height - below)}`, pour.dam.height - below),
          text([centre, top - fill - size], `axis: ${mm(pour.fill.centre)}`, size, "middle"),
        ].filter((shape) => !(socket && shape.kind === "text" && shape.align === "middle")),
      },
    ],
  );
}

/** From where to where along x an outline lies on the axis' line y = 0; nothing where it lies beside it. */
export function cutByAxis(outline: Outline): [number, number] | undefined {
  const crossings = outline.flatMap(([ax, ay], n): number[] => {
    const [bx, by] = outline[(n + 1) % outline.length]!;
    return ay < 0 === by < 0 ? [] : [ax + ((bx - ax) * ay) / (ay - by)];
  });
  return crossings.length === 0 ? undefined : [Math.min(...crossings), Math.max(...crossings)];
}

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
