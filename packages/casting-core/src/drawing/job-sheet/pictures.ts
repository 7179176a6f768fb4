import type { Point } from "../../geometry/types.js";
import { pieceKinds } from "../../pieces/kinds.js";
import type { Plan } from "../../plan/types.js";
import { roughLength } from "../../units/figure-text.js";
import {
  circle,
  FIRM,
  type Group,
  line,
  onSheet,
  rectangle,
  type Shape,
  type Sheet,
  text,
  type View,
} from "../sheet.js";

/** The layout as seen from the back, without numbers. */
export function layoutPicture({ tool, layout, job }: Pick<Plan, "tool" | "layout" | "job">): Sheet {
  const { view, size } = round(tool.diameter, false);
  const pieces = layout.pieces.map(({ x, y, radius, outline, kind }): Shape => {
    const style = { line: 0.4, fill: kind % 2 === 0 ? "pale" : "grey" } as const;
    if (radius !== undefined) return { kind: "circle", centre: onSheet(view, [x, y]), radius, style };
    return { kind: "polygon", points: outline.map((point) => onSheet(view, point)), style };
  });
  const bores = pieceKinds(job).map((kind) => kind.bore / 2);
  const holes = layout.pieces.flatMap(({ x, y, kind }) => {
    const radius = bores[kind] ?? 0;
    return radius > 0
      ? [{ ...circle(onSheet(view, [x, y]), radius), style: { line: 0.3, fill: "white" } } as Shape]
      : [];
  });
  return picture("layout", size, "The pieces as they are laid on the glass, seen from the back of the tool.", [
    { id: "layout-edge", shapes: [circle([view.x, view.y], tool.diameter / 2, FIRM), ...index(view, tool.diameter)] },
    { id: "layout-pieces", shapes: [...pieces, ...holes] },
  ]);
}

/** The channels at their true width, as seen on the working face. */
export function channelsPicture({ tool, grooves, layout }: Plan): Sheet {
  const { view, size } = round(tool.diameter, true);
  const channels = grooves.edges
    .filter((edge) => edge.cut)
    .map(
      ({ points }): Shape => ({
        kind: "polyline",
        points: points.map((point) => onSheet(view, point)),
        style: { line: grooves.cutter, ink: "grey" },
      }),
    );
  const pieces = layout.pieces.map(({ x, y, radius, outline }): Shape => {
    const style = { line: 0.4, fill: "white" } as const;
    if (radius !== undefined) return { kind: "circle", centre: onSheet(view, [x, y]), radius, style };
    return { kind: "polygon", points: outline.map((point) => onSheet(view, point)), style };
  });
  return picture("channels", size, "The channels as they are cut, seen on the working face: mirrored left to right.", [
    { id: "channels-cut", shapes: channels },
    { id: "channels-pieces", shapes: pieces },
    { id: "channels-edge", shapes: [circle([view.x, view.y], tool.diameter / 2, FIRM), ...index(view, tool.diameter)] },
  ]);
}

/** A section through glass and mold on the tool's axis, to scale, with its heights. */
export function sectionPicture({ blank, tool, pour, job, layout }: Plan): Sheet {
  const half = blank.diameter / 2;
  const edge = tool.diameter / 2;
  const depth = blank.curve === "convex" ? -1 : 1;
  const glass = Math.max(12, (job.blank.thickness ?? 25) * 0.6);
  const size = Math.max(4, blank.diameter / 38);
  const side = 12 * size;
  const projecting = Math.max(0, pour.socket?.projecting ?? 0);
  const top = Math.max(pour.dam.height, pour.fill.edge + projecting) + 3 * size + Math.max(0, blank.sagitta);
  const width = blank.diameter + 2 * side;
  const height = top + glass + Math.max(0, blank.sagitta) + 3 * size;
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
  const floor = Math.min(surface(0), surface(half)) - glass;
  const { edge: fill } = pour.fill;
  const kinds = pieceKinds(job);
  const cut = layout.pieces.filter(({ kind, y }) => Math.abs(y) < Math.min(kinds[kind]!.reach, 12) * 0.6);
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
          ...cut.map(({ x, kind }): Shape => {
            const { reach, thickness } = kinds[kind]!;
            const foot = surface(x);
            return rectangle(at(x - reach * 0.9, foot + thickness), reach * 1.8, thickness, {
              line: 0.3,
              fill: "grey",
            });
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
          line(at(-edge, surface(edge)), at(-edge, pour.dam.height), FIRM),
          line(at(edge, surface(edge)), at(edge, pour.dam.height), FIRM),
        ],
      },
      {
        id: "section-words",
        shapes: [
          ...label(`fill ${mm(fill)}`, fill),
          ...label("glass 0", 0),
          ...label(`dam ${mm(pour.dam.height)}`, pour.dam.height),
          text([centre, top - fill - size], `axis: ${mm(pour.fill.centre)}`, size, "middle"),
        ].filter((shape) => !(socket && shape.kind === "text" && shape.align === "middle")),
      },
    ],
  );
}

/** The container with its two marks, to scale; nothing without a container. */
export function bucketPicture({ pour, job }: Plan): Sheet | undefined {
  const { container } = job;
  const batch = pour.batches[0];
  if (!container || batch?.waterMark === undefined || batch.mixMark === undefined) return undefined;
  const { height } = container;
  const [bottom, upper] =
    container.shape === "tapered"
      ? [container.bottom, container.top]
      : container.shape === "marks"
        ? [height, height]
        : container.shape === "box"
          ? [container.length, container.length]
          : [container.diameter, container.diameter];
  const size = Math.max(5, height / 18);
  const side = 16 * size;
  const widest = Math.max(bottom, upper);
  const centre = size + widest / 2;
  const width = widest + size + side;
  const at = (share: number, up: number): Point => [
    centre + (share * (bottom + ((upper - bottom) * up) / height)) / 2,
    size + height - up,
  ];
  const level = (up: number, words: string, below: boolean): Shape[] => [
    line(at(-1, up), at(1, up), { line: 0.8 }),
    line(at(1, up), [centre + widest / 2 + size, at(1, up)[1]], { line: 0.3 }),
    text([centre + widest / 2 + 1.4 * size, at(1, up)[1] + (below ? 0.9 : 0.1) * size], words, size),
  ];
  const mm = (value: number) => roughLength(value, job.units);
  return picture(
    "bucket",
    { width, height: height + 2 * size },
    "The container from the side, to scale, with its two marks.",
    [
      {
        id: "bucket-lines",
        shapes: [
          { kind: "polyline", points: [at(-1, height), at(-1, 0), at(1, 0), at(1, height)], style: { line: 1 } },
          ...level(batch.waterMark, `water ${mm(batch.waterMark)}`, true),
          ...level(batch.mixMark, `mix ${mm(batch.mixMark)}`, false),
        ],
      },
    ],
  );
}

/** Predicted removal over the mirror's radius, and what the target asks for, dashed. */
export function wearPicture({ setup, blank, job }: Plan): Sheet {
  const [width, height, left, bottom, size] = [300, 130, 26, 106, 7];
  const { zones } = setup.wear;
  const most = Math.max(1, ...zones.map(({ removal, wanted }) => Math.max(removal, wanted ?? 0))) * 1.05;
  const at = (radius: number, value: number): Point => [
    left + ((width - left - 8) * radius) / (blank.diameter / 2),
    bottom - ((bottom - 8) * value) / most,
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

function round(diameter: number, mirrored: boolean): { view: View; size: { width: number; height: number } } {
  const across = diameter + 24;
  return { view: { x: across / 2, y: across / 2, mirrored }, size: { width: across, height: across } };
}

/** The index mark alone: a cross on the axis would lie over the pieces. */
function index(view: View, diameter: number): Shape[] {
  return [line(onSheet(view, [0, diameter / 2]), onSheet(view, [0, diameter / 2 + 8]), FIRM)];
}

function picture(
  name: string,
  { width, height }: { width: number; height: number },
  caption: string,
  groups: Group[],
): Sheet {
  return { name, width, height, caption, facts: [], bodyHeight: height, groups };
}
