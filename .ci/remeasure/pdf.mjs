// Reads the drawings back out of the pages of a PDF: every path with its matrix, line and clip, and the page's words.
import { inflateSync } from "node:zlib";

/** The pages of a PDF in its own order, each with its `words` and its `paths`. */
export function readPages(bytes) {
  const objects = objectsOf(bytes);
  return [...objects.values()]
    .filter(({ dictionary }) => /\/Type \/Page\b/.test(dictionary))
    .map(({ dictionary }) => {
      const contents = objects.get(Number(/\/Contents (\d+) 0 R/.exec(dictionary)[1]));
      return drawn(contents.stream);
    });
}

/** Every object by its number, as the file's own table of places gives them. */
function objectsOf(bytes) {
  const text = bytes.toString("latin1");
  const table = Number(/startxref\s+(\d+)\s+%%EOF\s*$/.exec(text)[1]);
  const rows = [...text.slice(table).matchAll(/^(\d{10}) \d{5} n/gm)];
  const objects = new Map();
  for (const [, place] of rows) {
    const at = Number(place);
    const number = Number(/^(\d+) 0 obj/.exec(text.slice(at, at + 20))[1]);
    const end = text.indexOf("endobj", at);
    const from = text.indexOf("stream\n", at);
    const dictionary = text.slice(at, from < 0 ? end : Math.min(from, end));
    objects.set(number, { dictionary, from: from >= 0 && from < end ? from + 7 : undefined });
  }
  for (const object of objects.values()) {
    if (object.from === undefined) continue;
    const [, length, , reference] = /\/Length (\d+)( (0) R)?/.exec(object.dictionary);
    const size = reference ? Number(/obj\s+(\d+)/.exec(objects.get(Number(length)).dictionary)[1]) : Number(length);
    const raw = bytes.subarray(object.from, object.from + size);
    object.stream = (object.dictionary.includes("/FlateDecode") ? inflateSync(raw) : raw).toString("latin1");
  }
  return objects;
}

const TOKEN = /\[[^\]]*\]|<[^>]*>|\((?:\\.|[^\\)])*\)|\/?[^\s[\]<>()/]+/g;

/** Follows the operators of a page. A path's points are in the units in force where it was drawn, its `matrix` beside. */
function drawn(content) {
  const paths = [];
  let [words, operands, path, window] = ["", [], [], undefined];
  let state = { matrix: [1, 0, 0, 1, 0, 0], width: 1, dash: "[]", ink: "0 0 0" };
  const stack = [];
  const add = (kind, ...points) => path.push({ kind, points });
  const pair = (n) => [Number(operands[n]), Number(operands[n + 1])];
  const end = (stroked, filled) => {
    if (path.length > 0) paths.push({ steps: path, stroked, filled, ...state });
    path = [];
  };
  const operators = {
    q: () => stack.push({ ...state }),
    Q: () => {
      state = stack.pop();
    },
    cm: () => {
      state.matrix = times(operands.map(Number), state.matrix);
    },
    w: () => {
      state.width = Number(operands[0]);
    },
    d: () => {
      state.dash = operands[0];
    },
    SCN: () => {
      state.ink = operands.join(" ");
    },
    m: () => add("m", pair(0)),
    l: () => add("l", pair(0)),
    c: () => add("c", pair(0), pair(2), pair(4)),
    h: () => add("h"),
    re: () => {
      window = { at: pair(0), size: pair(2), matrix: state.matrix };
    },
    W: () => {
      state.clip = window;
    },
    n: () => end(false, false),
    S: () => end(true, false),
    f: () => end(false, true),
    B: () => end(true, true),
    TJ: () => {
      for (const [, hex] of operands[0].matchAll(/<([0-9a-f]*)>/gi))
        words += Buffer.from(hex, "hex").toString("latin1");
    },
    ET: () => {
      words += "\n";
    },
  };
  for (const [token] of content.matchAll(TOKEN)) {
    if (!/^[A-Za-z*]+$/.test(token)) operands.push(token);
    else {
      operators[token]?.();
      operands = [];
    }
  }
  return { words, paths };
}

/** One matrix after another, as a page's operators put them together. */
function times([a, b, c, d, e, f], [A, B, C, D, E, F]) {
  return [a * A + b * C, a * B + b * D, c * A + d * C, c * B + d * D, e * A + f * C + E, e * B + f * D + F];
}
