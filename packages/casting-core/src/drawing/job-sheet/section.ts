import type { Outline, Point } from "../../geometry/types.js";
import { pieceKinds } from "../../pieces/kinds.js";
import type { Plan } from "../../plan/types.js";
import { belowGlass } from "../../pour/dam.js";
import { thicknessTaken } from "../../setup/retainer.js";
import { roughLength } from "../../units/figure-text.js";
import { FIRM, line, rectangle, type Shape, type Sheet, text } from "../sheet.js";
import { picture } from "./frame.js";

/** From one line of words to the next, in heights of the letters. */
const LINES = 1.2;

/** A section through glass and mold on the tool's axis, to scale, with its heights. */
export function sectionPicture({ blank, tool, pour, job, layout }: Plan): Sheet {
  const half = blank.diameter / 2;
  const edge = tool.diameter / 2;
  const depth = blank.curve === "convex" ? -1 : 1;
  // Read on a phone too, where the picture is some 360 pixels wide: the words stand on the right only.
  const size = Math.max(4, blank.diameter / 24);
  const [left, right] = [2 * size, 10 * size];
  const projecting = Math.max(0, pour.socket?.projecting ?? 0);
  const top = Math.max(pour.dam.height, pour.fill.edge + projecting) + 3 * size + Math.max(0, blank.sagitta);
  const width = left + blank.diameter + right;
  const centre = left + half;
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
  // On a wide tool the words are higher than the plaster is deep: each stands clear of the one below it.
  const label = (words: string, up: number, place = up): Shape[] => [
    line(at(edge + 2, up), at(place === up ? half + size : half, up), { line: 0.3 }),
    ...(place === up ? [] : [line(at(half, up), at(half + size, place), { line: 0.3 })]),
    text([centre + half + 1.3 * size, top - place + 0.36 * size], words, size),
  ];
  const fillPlace = Math.max(fill, LINES * size);
  const damUp = pour.dam.height - below;
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
            const foot = surface((from + to) / 2) + (job.plaster.film ?? 0);
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
          ...label(`fill ${mm(fill)}`, fill, fillPlace),
          ...label("glass 0", 0),
          ...label(`dam ${mm(damUp)}`, damUp, Math.max(damUp, fillPlace + LINES * size)),
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
