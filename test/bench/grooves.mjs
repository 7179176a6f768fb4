// The channels' figures: time, distance from the true middle, cuts of the fewest possible, retracing of the least possible.
import { cutsOf } from "../../packages/casting-core/dist/grooves/cuts/cuts.js";
import { leastRetrace } from "../../packages/casting-core/dist/grooves/cuts/retrace.js";
import { linksAt } from "../../packages/casting-core/dist/grooves/network/graph.js";
import { planGrooves } from "../../packages/casting-core/dist/grooves/plan.js";
import { lengthOf } from "../../packages/casting-core/dist/grooves/polyline.js";
import { random } from "../../packages/casting-core/dist/random.js";
import { record } from "./record.mjs";

/** Turned hexagons, 19 mm over corners, on a shaken lattice: at least 3 mm apart. */
function shaken(diameter) {
  const source = random(1);
  const micro = (value) => Math.round(value * 1000) / 1000;
  const pieces = [];
  const most = Math.ceil(diameter / 40);
  for (let i = -most; i <= most; i++) {
    for (let j = -most; j <= most; j++) {
      const x = micro(i * 23 + (j & 1) * 11.5 + source.next());
      const y = micro(j * 20.5 + source.next());
      const turn = 6 * source.next();
      if (Math.hypot(x, y) + 9.5 > diameter / 2 - 3) continue;
      const outline = Array.from({ length: 6 }, (_, k) => [
        micro(x + 9.5 * Math.cos(turn + (k * Math.PI) / 3)),
        micro(y + 9.5 * Math.sin(turn + (k * Math.PI) / 3)),
      ]);
      pieces.push({ id: pieces.length + 1, kind: 0, x, y, angle: 0, outline });
    }
  }
  return { seed: 1, gap: 3, hand: 0, pieces, unplaced: [], quality: {} };
}

function jobOf(changes) {
  const grooves = { cutter: 2, depth: 2.5, clearance: 0.5, pattern: "all", order: "fewest", "rim-loop": false };
  return { blank: { curve: "flat" }, layout: { "keep-clear": [] }, grooves: { ...grooves, ...changes } };
}

function timed(work) {
  const start = process.cpuUsage();
  const result = work();
  const { user, system } = process.cpuUsage(start);
  return { result, seconds: (user + system) / 1e6 };
}

function toPiece([x, y], { outline }) {
  let least = Infinity;
  outline.forEach(([ax, ay], i) => {
    const [bx, by] = outline[(i + 1) % outline.length];
    const [ex, ey] = [bx - ax, by - ay];
    const t = Math.max(0, Math.min(1, ((x - ax) * ex + (y - ay) * ey) / (ex * ex + ey * ey)));
    least = Math.min(least, Math.hypot(x - ax - t * ex, y - ay - t * ey));
  });
  return least;
}

/** Most that the two nearest of pieces and tool's edge differ along the lines, halved: the distance from the middle. */
function offMiddle({ edges }, { pieces }, diameter) {
  let worst = 0;
  for (const { points, outlet } of edges) {
    if (outlet) continue;
    for (let i = 1; i < points.length; i++) {
      const point = [(points[i - 1][0] + points[i][0]) / 2, (points[i - 1][1] + points[i][1]) / 2];
      const near = pieces.filter(({ x, y }) => Math.abs(x - point[0]) < 45 && Math.abs(y - point[1]) < 45);
      const distances = near.map((piece) => toPiece(point, piece));
      distances.push(diameter / 2 - Math.hypot(...point));
      distances.sort((p, q) => p - q);
      worst = Math.max(worst, (distances[1] - distances[0]) / 2);
    }
  }
  return worst;
}

function oddOf(nodes, edges) {
  const cut = edges.filter((edge) => edge.cut).map((edge) => ({ a: edge.a, b: edge.b, length: lengthOf(edge.points) }));
  const at = linksAt(nodes.length, cut);
  return { cut, at, odd: at.flatMap((links, node) => (links.length % 2 === 1 ? [node] : [])) };
}

/** One row for each size of tool, as printed. */
export function rows(diameters = [250, 405, 405, 1610]) {
  return diameters.map((diameter) => {
    const layout = shaken(diameter);
    const tool = { diameter, rim: 3, sagitta: 0 };
    const { result: grooves, seconds } = timed(() => planGrooves(jobOf({}), tool, layout));
    const { cut, at, odd } = oddOf(grooves.nodes, grooves.edges);
    const row = {
      pieces: layout.pieces.length,
      seconds: seconds.toFixed(2),
      "off the middle, mm": offMiddle(grooves, layout, diameter).toFixed(4),
      "cuts / fewest": (grooves.cuts.length / Math.max(1, odd.length / 2)).toFixed(3),
    };
    const one = timed(() => cutsOf(grooves.nodes, grooves.edges, "one"));
    // The dense problem of all odd junctions takes minutes on a large tool.
    if (layout.pieces.length > 300) return { ...row, "one cut, seconds": one.seconds.toFixed(2) };
    const again = leastRetrace(odd, cut, at, odd.length).reduce((sum, link) => sum + cut[link].length, 0);
    return {
      ...row,
      "one cut, seconds": one.seconds.toFixed(2),
      "retraced / least": (one.result.retraced / again).toFixed(4),
      "retraced, share": (one.result.retraced / grooves.totals.length).toFixed(3),
    };
  });
}

console.log("channels between shaken hexagons, gap from 3 mm");
const table = rows();
console.table(table);
for (const { pieces, ...figures } of table) record(`channels, ${pieces} pieces`, figures);
