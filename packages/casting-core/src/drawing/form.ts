import type { Point } from "../geometry/types.js";
import type { Plan } from "../plan/types.js";
import { cos, PI, sin } from "../trig.js";
import { closeLength, roughLength } from "../units/figure-text.js";
import { BLOCK_HEIGHT, BLOCK_WIDTH, block, MARGIN } from "./block.js";
import { wrapped } from "./letters.js";
import { circle, FIRM, line, rectangle, type Shape, type Sheet, type Step, THIN, text } from "./sheet.js";

/** The former's ring is this wide, as a share of its diameter and at least, mm, but no more than a quarter of its radius (common practice). */
const RING = { share: 0.08, least: 12, most: 0.25 };
/** Bridges between the ring and the middle, and their width, mm. */
const BRIDGES = 3;
const BRIDGE = 25;
/** A hole is this much wider than the socket that passes through it, mm. */
const PLAY = 1;
/** Width of the spacer's caption, mm. */
const CAPTION = 38;
/** A compass point's hole where there is no socket, mm. */
const COMPASS = 4;

/**
 * The dam's former at its true size: a ring that the sheet goes round, bridges to a middle that holds the socket upright,
 * openings to pour through. For a full-size tool, which has none, a bar that rests across the dam and centres the socket.
 */
export function formSheet(plan: Plan): Sheet {
  return plan.pour.dam.formerAt === undefined ? centringBar(plan) : former(plan);
}

function former(plan: Plan): Sheet {
  const { job, pour, socket } = parts(plan);
  const diameter = pour.dam.formDiameter;
  const spacer = pour.dam.centring ?? 0;
  const across = diameter + 2 * MARGIN + 4;
  const width = Math.max(across, BLOCK_WIDTH);
  const centre: Point = [width / 2, across / 2];
  const outer = diameter / 2;
  const inner = outer - Math.min(RING.most * outer, Math.max(RING.least, RING.share * diameter));
  const hole = socket ? (socket.diameter + PLAY) / 2 : COMPASS / 2;
  const hub = Math.min(inner - 2, hole + Math.min(RING.most * outer, Math.max(8, 0.06 * diameter)));
  const bridge = Math.min(BRIDGE, hub * 1.2);
  const holes = openings(centre, hub, inner, bridge);
  const shapes: Shape[] = [
    circle(centre, outer, FIRM),
    circle(centre, hole, FIRM),
    ...holes,
    line([centre[0] - 4, centre[1]], [centre[0] + 4, centre[1]]),
    line([centre[0], centre[1] - 4], [centre[0], centre[1] + 4]),
  ];
  const mm = (value: number) => closeLength(value, job.units);
  const spacerTop = across;
  const hasSpacer = spacer >= 3;
  const spacerHeight = hasSpacer ? 24 : 0;
  const { labels, check, facts } = block(plan, spacerTop + spacerHeight, width, [
    "FORMER of the dam: cut the outline, the hole and the openings; the sheet goes round its edge.",
    `Outline: diameter ${mm(diameter)}, set the compass or jigsaw to a radius of ${mm(outer)}. Centre hole ${mm(2 * hole)}.`,
    holes.length > 0
      ? `Openings between radius ${mm(hub)} and ${mm(inner)}.`
      : "There is no room for openings between hole and edge: pour first, then set it on.",
    `Raise it so that its underside is ${roughLength(pour.dam.formerAt ?? 0, job.units)} above the glass at the edge.`,
    "Round and flat; either side may be up.",
  ]);
  if (hasSpacer) {
    shapes.push(rectangle([MARGIN, spacerTop + 2], Math.min(spacer, width - 2 * MARGIN), 16, FIRM));
    const caption = `spacer ${roughLength(spacer, job.units)}: dam to the mirror's edge, equal all round`;
    // In the spacer where it is wide enough, and narrow beside it: the border of a small page would cut a long line.
    const left = spacer >= CAPTION + 10 ? MARGIN + 3 : MARGIN + spacer + 4;
    const lines = wrapped(caption, 4, CAPTION);
    const first = spacerTop + 11.5 - 2.5 * (lines.length - 1);
    labels.push(...lines.map((words, n) => text([left, first + 5 * n], words, 4)));
  }
  return {
    name: "form",
    width,
    height: spacerTop + spacerHeight + BLOCK_HEIGHT + MARGIN,
    caption: "former of the dam",
    facts,
    bodyHeight: spacerTop + spacerHeight,
    groups: [{ id: "marks", shapes }, { id: "labels", shapes: labels }, check],
  };
}

/** The openings between the bridges: sectors of a ring whose straight sides run parallel to the bridges. */
function openings(centre: Point, hub: number, inner: number, bridge: number): Shape[] {
  const half = bridge / 2;
  if (inner - hub < 4 || hub <= half) return [];
  const shapes: Shape[] = [];
  for (let n = 0; n < BRIDGES; n++) {
    const from = (2 * PI * n) / BRIDGES;
    const to = (2 * PI * (n + 1)) / BRIDGES;
    // A point at `radius` that lies `half` beside the bridge's middle line, before or behind it.
    const beside = (angle: number, radius: number, side: number): Point => {
      const along = Math.sqrt(radius * radius - half * half);
      const [c, s] = [cos(angle), sin(angle)];
      return [centre[0] + along * c - side * half * s, centre[1] - along * s - side * half * c];
    };
    const steps: Step[] = [
      { to: beside(from, hub, 1) },
      { to: beside(from, inner, 1) },
      { to: beside(to, inner, -1), arc: { radius: inner, left: true, large: false } },
      { to: beside(to, hub, -1) },
      { to: beside(from, hub, 1), arc: { radius: hub, left: false, large: false } },
    ];
    shapes.push({ kind: "path", steps, style: FIRM });
  }
  return shapes;
}

function centringBar(plan: Plan): Sheet {
  const { job, pour, socket } = parts(plan);
  const length = pour.dam.formDiameter + 2 * job.dam.sheet + 40;
  const wide = Math.max(40, (socket?.diameter ?? 0) + 24);
  const width = Math.max(length + 2 * MARGIN, BLOCK_WIDTH);
  const height = wide + 2 * MARGIN + 6;
  const centre: Point = [width / 2, height / 2];
  const hole = socket ? (socket.diameter + PLAY) / 2 : COMPASS / 2;
  const edge = pour.dam.formDiameter / 2 + job.dam.sheet;
  const mark = (x: number): Shape =>
    line([x, centre[1] - wide / 2], [x, centre[1] + wide / 2], { line: 0.25, dash: [3, 2] });
  const mm = (value: number) => closeLength(value, job.units);
  const { labels, check, facts } = block(plan, height, width, [
    "CENTRING GAUGE for a full-size tool: a bar across the dam that holds the middle; there is no former.",
    `The dashed lines are the dam's outside, ${mm(2 * edge)} across, equal at both ends in two directions. Hole ${mm(2 * hole)}.`,
    `The dam goes round the blank, gripping its side${(job.blank.bevel ?? 0) > 0 ? " below the bevel" : ""}. Either side may be up.`,
  ]);
  return {
    name: "form",
    width,
    height: height + BLOCK_HEIGHT + MARGIN,
    caption: "centring gauge for a full-size tool",
    facts,
    bodyHeight: height,
    groups: [
      {
        id: "marks",
        shapes: [
          rectangle([centre[0] - length / 2, centre[1] - wide / 2], length, wide, FIRM),
          circle(centre, hole, FIRM),
          mark(centre[0] - edge),
          mark(centre[0] + edge),
          line([centre[0], centre[1] - wide / 2], [centre[0], centre[1] + wide / 2], THIN),
        ],
      },
      { id: "labels", shapes: labels },
      check,
    ],
  };
}

function parts({ job, pour }: Plan) {
  return { job, pour, socket: job.socket };
}
