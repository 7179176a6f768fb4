// Reads pieces and channels back out of grooves.dxf, which is mirrored. Coordinates as in the plan.
import { less, plain } from "./svg.mjs";

/** The tool's radius, the pieces in their order and the cut and uncut lines of a drawing. */
export function readDxf(text) {
  const entities = entitiesOf(text);
  const on = (layer) => entities.filter((entity) => entity.layer === layer);
  const pieces = on("PIECES").map(({ type, points, radius }, n) => ({
    id: n + 1,
    ...(type === "CIRCLE" ? { centre: points[0], radius } : { corners: points }),
  }));
  const lines = (layer) => on(layer).map(({ points, closed }) => (closed ? [...points, points[0]] : points));
  return { toolRadius: on("TOOL_EDGE")[0].radius, pieces, cut: lines("CHANNELS"), uncut: lines("UNCUT") };
}

/** Every polyline and circle of the entities section, by its group codes. */
function entitiesOf(text) {
  const rows = text.split(/\r?\n/);
  const found = [];
  let within = false;
  for (let n = 0; n + 1 < rows.length; n += 2) {
    const [code, value] = [Number(rows[n]), rows[n + 1]];
    if (code === 2 && rows[n - 1] === "SECTION") within = value === "ENTITIES";
    if (!within) continue;
    if (code === 0) found.push({ type: value, points: [], closed: false });
    const entity = found.at(-1);
    if (!entity) continue;
    if (code === 8) entity.layer = value;
    if (code === 10) entity.points.push([less(0, Number(plain(value))), 0]);
    if (code === 20) entity.points.at(-1)[1] = Number(plain(value));
    if (code === 40) entity.radius = Number(plain(value));
    if (code === 70) entity.closed = (Number(value) & 1) === 1;
  }
  return found.filter(({ type }) => ["LWPOLYLINE", "CIRCLE"].includes(type));
}
