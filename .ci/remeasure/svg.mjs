// Reads pieces and channels back out of the SVG sheets. Coordinates as in the plan: origin on the axis, y up, seen from the back.

/** Numbers as they are written: plain decimals, without exponent and minus zero, else an error. */
export function plain(text) {
  for (const number of text.split(/[ ,]/))
    if (!/^-?\d+(\.\d+)?$/.test(number) || /^-0(\.0*)?$/.test(number))
      throw new Error(`"${number}" is no plain decimal`);
  return text;
}

/** A written coordinate less another, mm: exact to a millionth of a millimetre, as both are decimals. */
export function less(a, b) {
  return (Math.round(Number(a) * 1e6) - Math.round(Number(b) * 1e6)) / 1e6 + 0;
}

/** The tool's radius, the pieces in their order and the cut and uncut lines of a sheet; what it does not show is empty. */
export function readSheet(svg, mirrored) {
  const edge = shapesOf(svg, "tool-edge")[0];
  const [cx, cy] = [edge.cx, edge.cy];
  const place = ([x, y]) => [mirrored ? less(cx, x) : less(x, cx), less(cy, y)];
  const points = (text) => text.split(" ").map((pair) => place(pair.split(",")));
  const pieceOf = ({ name, "data-piece": id, points: text, cx: x, cy: y, r }, n) => ({
    id: Number(id ?? n + 1),
    ...(name === "circle" ? { centre: place([x, y]), radius: Number(r) } : { corners: points(text) }),
  });
  const lines = (id) => shapesOf(svg, id).map((shape) => points(shape.points));
  const pieces = shapesOf(svg, mirrored ? "outlines" : "pieces").map(pieceOf);
  return { toolRadius: Number(edge.r), pieces, cut: lines("grooves"), uncut: lines("uncut") };
}

/** The shapes of a group by its id: each its element's name and its attributes. */
function shapesOf(svg, id) {
  const body = new RegExp(`<g id="${id}">(.*?)</g>`, "s").exec(svg)?.[1] ?? "";
  return [...body.matchAll(/<(circle|polygon|polyline) ([^>]*)>/g)].map(([, name, attributes]) => ({
    name,
    ...Object.fromEntries(
      [...attributes.matchAll(/([\w-]+)="([^"]*)"/g)].map(([, key, value]) => [
        key,
        ["points", "cx", "cy", "r"].includes(key) ? plain(value) : value,
      ]),
    ),
  }));
}
