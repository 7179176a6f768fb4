// Moves one piece of a written file by a micrometre toward its nearest neighbour: whoever measures again must find out.
import { clearance } from "./exact.mjs";
import { shapeOfPiece } from "./layout.mjs";

const STEP = 0.001;

/** One micrometre along an axis, from piece `id` toward the piece nearest to it. */
export function pushOf({ layout: { pieces } }, id) {
  const own = pieces[id - 1];
  const far = (piece) => clearance(shapeOfPiece(own), shapeOfPiece(piece));
  const others = pieces.filter((piece) => piece.id !== id);
  const nearest = others.reduce((best, piece) => (far(piece) < far(best) ? piece : best));
  const [dx, dy] = [nearest.x - own.x, nearest.y - own.y];
  return Math.abs(dx) > Math.abs(dy) ? [STEP * Math.sign(dx), 0] : [0, STEP * Math.sign(dy)];
}

/** The bytes of the file `name` with piece `id` moved in it; `svg` is the text of the same set's placement.svg. */
export function moved(name, bytes, { plan, svg, id }) {
  const [dx, dy] = pushOf(plan, id);
  const text = bytes.toString("latin1");
  return Buffer.from(MOVES[name]({ text, plan, svg, id, dx, dy }), "latin1");
}

const MOVES = {
  "plan.json": ({ plan, id, dx, dy }) => {
    const piece = movedPiece(plan.layout.pieces[id - 1], dx, dy);
    const pieces = plan.layout.pieces.map((other) => (other.id === id ? piece : other));
    return Buffer.from(JSON.stringify({ ...plan, layout: { ...plan.layout, pieces } }), "utf8").toString("latin1");
  },
  "placement.svg": ({ text, id, dx, dy }) =>
    text.replace(new RegExp(`<(?:polygon|circle) data-piece="${id}"[^>]*>`), (shape) =>
      shape
        .replace(/(points=")([^"]*)/, (_, key, points) => key + pairs(points, /(\S+),(\S+)/g, ",", dx, -dy))
        .replace(/c(x)="(\S+)" cy="(\S+)"/, (_, x, cx, cy) => `c${x}="${plus(cx, dx)}" cy="${plus(cy, -dy)}"`),
    ),
  "grooves.dxf": ({ text, id, dx, dy }) => {
    const parts = text.split(/(?=\n0\r?\n(?:LWPOLYLINE|CIRCLE|LINE|TEXT)\r?\n)/);
    const at = parts.flatMap((part, n) => (/\n8\r?\nPIECES\r?\n/.test(part) ? [n] : []))[id - 1];
    parts[at] = pairs(parts[at], /(?<=\n10\r?\n)(\S+)\r?\n20\r?\n(\S+)/g, "\n20\n", -dx, dy);
    return parts.join("");
  },
  // Lengths and places in a PDF must stay: what its numbers lose is made up for, a piece whose numbers grow is not for this.
  "templates.pdf": ({ text, plan, svg, id, dx, dy }) => {
    const { x, y, radius, outline } = plan.layout.pieces[id - 1];
    const [, cx, cy] = /<g id="tool-edge"><circle cx="(\S+)" cy="(\S+)"/.exec(svg);
    const [left, top] = radius === undefined ? outline[0] : [plus(x, -radius), y];
    const from = text.indexOf(`\n${plus(cx, left)} ${plus(cy, -top)} m\n`) + 1;
    if (from === 0) throw new Error(`piece ${id} is not where it was looked for`);
    const to = text.indexOf("\nS\n", from) + 1;
    const changed = pairs(text.slice(from, to), /(-?[\d.]+) (-?[\d.]+)(?= (?:[mlc]|-?[\d.]+ ))/g, " ", dx, -dy);
    return text.slice(0, from) + changed.padEnd(to - from, "\n") + text.slice(to);
  },
};

/** Every pair of numbers that the pattern finds, moved. */
function pairs(text, pattern, mark, dx, dy) {
  return text.replace(pattern, (_, x, y) => `${plus(x, dx)}${mark}${plus(y, dy)}`);
}

function movedPiece({ x, y, outline, ...piece }, dx, dy) {
  const to = ([px, py]) => [Number(plus(px, dx)), Number(plus(py, dy))];
  const [newX, newY] = to([x, y]);
  return { ...piece, x: newX, y: newY, outline: outline.map(to) };
}

/** The sum of two lengths as a decimal. */
function plus(value, by) {
  return String((Math.round(Number(value) * 1e6) + Math.round(Number(by) * 1e6)) / 1e6);
}
