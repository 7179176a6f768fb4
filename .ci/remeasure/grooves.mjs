// Channels measured again: wherever the cutter goes, its side keeps clear of every piece.
import { pointClearance, toSegment } from "./exact.mjs";

/** What is allowed of the clearance, mm: a channel is cut where its room is no more than 0.02 mm short. */
const ROOM = 0.01;
/** Lines are written to a micrometre. */
const WRITTEN = 0.0015;

/** What does not hold of the channels of a plan; `pieces` as shapeOfPiece gives them. */
export function grooveFaults({ grooves, job, tool }, pieces) {
  const faults = [];
  const needed = grooves.cutter / 2 + job.grooves.clearance - ROOM - 1e-9;
  const boxed = pieces.map((piece) => ({ ...piece, ...middleOf(piece) }));
  const sets = [
    ["edge", grooves.edges.filter((edge) => edge.cut).map(({ points }) => points)],
    ["cut", grooves.cuts],
    ["rounded cut", grooves.toolpath ?? []],
  ];
  for (const [what, lines] of sets) {
    lines.forEach((line, n) => {
      const least = leastClearance(line, boxed, needed);
      if (least < needed) faults.push(`${what} ${n} runs ${least} mm from a piece, nearer than ${needed}`);
      if (line.some(([x, y]) => Math.hypot(x, y) > tool.diameter / 2 + WRITTEN))
        faults.push(`${what} ${n} leaves the tool`);
    });
  }
  grooves.edges.forEach(({ points, room, a, b }, n) => {
    const measured = 2 * leastClearance(points, boxed, Infinity);
    // Between pieces that touch, the written line may run into one by what it was rounded.
    const allowed = measured > 0 ? 2 * WRITTEN : 2 * ROOM;
    if (pieces.length > 0 && !(Math.abs(Math.max(0, measured) - room) < allowed))
      faults.push(`edge ${n} has ${measured} mm of room, not ${room}`);
    if (`${points[0]}` !== `${grooves.nodes[a]}` || `${points.at(-1)}` !== `${grooves.nodes[b]}`)
      faults.push(`edge ${n} does not run from its one node to the other`);
  });
  faults.push(...wayFaults(grooves), ...totalFaults(grooves));
  return faults;
}

function middleOf({ corners, centre, radius }) {
  if (radius !== undefined) return { middle: centre, reach: radius };
  const middle = [0, 1].map((axis) => corners.reduce((sum, corner) => sum + corner[axis], 0) / corners.length);
  return { middle, reach: Math.max(...corners.map(([x, y]) => Math.hypot(x - middle[0], y - middle[1]))) };
}

/** Least distance of a line from any piece, mm, as far as it is below `limit`; negative where it runs into one. */
function leastClearance(line, pieces, limit) {
  const [xs, ys] = [line.map(([x]) => x), line.map(([, y]) => y)];
  const [left, right, low, high] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const near = pieces
    .map((piece) => {
      const [x, y] = piece.middle;
      return {
        piece,
        atLeast: Math.hypot(Math.max(left - x, 0, x - right), Math.max(low - y, 0, y - high)) - piece.reach,
      };
    })
    .filter(({ atLeast }) => atLeast < limit)
    .sort((a, b) => a.atLeast - b.atLeast);
  let least = limit;
  for (const { piece, atLeast } of near) {
    if (atLeast >= least) break;
    for (let n = 1; n < line.length; n++) {
      const [from, to] = [line[n - 1], line[n]];
      if (toSegment(piece.middle, from, to) - piece.reach >= least) continue;
      least = Math.min(least, segmentClearance(from, to, piece));
    }
  }
  return least;
}

function segmentClearance(from, to, piece) {
  if (piece.radius !== undefined) return toSegment(piece.centre, from, to) - piece.radius;
  if (piece.corners.some((corner, n) => crosses(from, to, corner, piece.corners[(n + 1) % piece.corners.length])))
    return -1;
  const ends = [from, to].map((end) => pointClearance(end, piece));
  return Math.min(...ends, ...piece.corners.map((corner) => toSegment(corner, from, to)));
}

function crosses(a, b, c, d) {
  const side = ([px, py], [qx, qy], [rx, ry]) => (qx - px) * (ry - py) - (qy - py) * (rx - px);
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

/** The cuts run along cut edges alone, over each at least once, and as much over again as is said. */
function wayFaults({ edges, cuts, totals }) {
  const name = (from, to) => [`${from}`, `${to}`].sort().join(" ");
  const left = new Map();
  for (const { points, cut } of edges)
    if (cut) for (let n = 1; n < points.length; n++) left.set(name(points[n - 1], points[n]), 0);
  const faults = [];
  for (const cut of cuts) {
    for (let n = 1; n < cut.length; n++) {
      const step = name(cut[n - 1], cut[n]);
      if (left.has(step)) left.set(step, left.get(step) + 1);
      else faults.push(`a cut runs from ${cut[n - 1]} to ${cut[n]}, where there is no channel`);
    }
  }
  const missed = [...left].find(([, times]) => times === 0);
  if (missed) faults.push(`no cut runs along ${missed[0]}`);
  if (cuts.length !== totals.cuts) faults.push(`there are ${cuts.length} cuts, not ${totals.cuts}`);
  return faults.slice(0, 3);
}

function totalFaults({ edges, cuts, totals, depth, cutter }) {
  const length = (lines) =>
    lines.reduce((sum, line) => sum + line.reduce((all, point, n) => all + (n ? far(line[n - 1], point) : 0), 0), 0);
  const far = ([ax, ay], [bx, by]) => Math.hypot(bx - ax, by - ay);
  const cut = edges.filter((edge) => edge.cut);
  const once = length(cut.map(({ points }) => points));
  const faults = [];
  const must = (holds, text) => holds || faults.push(text);
  must(
    Math.abs(once - totals.length) < 1e-6 * Math.max(1, once),
    `the channels are ${once} mm long, not ${totals.length}`,
  );
  const again = length(cuts) - once;
  must(
    Math.abs(again - totals.retraced) < 1e-6 * Math.max(1, once),
    `${again} mm are retraced, not ${totals.retraced}`,
  );
  must(edges.length - cut.length === totals.uncut, `${edges.length - cut.length} are uncut, not ${totals.uncut}`);
  must(
    Math.abs(totals.volume - (totals.area * depth) / 1000) <= 1e-8 * Math.max(1, totals.volume),
    "the channels' volume is not area by depth",
  );
  const most = once * cutter + (cut.length * Math.PI * cutter * cutter) / 4;
  must(totals.area <= most * (1 + 1e-6), `the channels' area of ${totals.area} mm² is more than ${most}`);
  return faults;
}
