import type { Field } from "../field.js";
import { targetOf } from "../quality/target.js";
import { type Engine, newEngine } from "./engine.js";
import type { Shapes } from "./shapes.js";

/** The pieces of a bed, each in its place of flat arrays: kind, centroid and turn (as cosine and sine). */
export interface Pieces {
  count: number;
  kind: Int32Array;
  x: Float64Array;
  y: Float64Array;
  cosine: Float64Array;
  sine: Float64Array;
}

/** The film with the pieces as they are being laid; the engine holds them. */
export interface Bed {
  readonly shapes: Shapes;
  readonly field: Field;
  /** See targetOf. */
  readonly target: Float64Array;
  readonly engine: Engine;
}

/** An empty bed with room for `capacity` pieces. */
export function emptyBed(shapes: Shapes, field: Field, capacity: number): Bed {
  const engine = newEngine();
  const { kinds, stride } = shapes;
  engine.open(capacity, kinds.length, stride, field.clear.length);
  const target = targetOf(field, Math.min(...shapes.reach));
  for (const [{ value }, numbers] of [
    [engine.shape, shapes.outline],
    [engine.normalAt, shapes.normalAt],
    [engine.edge, shapes.edge],
    [engine.radius, shapes.radius],
    [engine.reach, shapes.reach],
    [engine.inner, shapes.inner],
    [engine.area, shapes.area],
    [engine.turnEase, shapes.turnEase],
    [engine.target, target],
  ] as const)
    new Float64Array(engine.memory.buffer, value, numbers.length).set(numbers);
  new Int32Array(engine.memory.buffer, engine.corners.value, kinds.length).set(shapes.corners);
  new Int32Array(engine.memory.buffer, engine.fold.value, kinds.length).set(shapes.fold);
  return inField({ shapes, field, target, engine }, field);
}

/** The same bed in a field whose circles are of other sizes. */
export function inField(bed: Bed, field: Field): Bed {
  const { engine } = bed;
  const circles = field.clear.flatMap(({ x, y, radius }) => [x, y, radius]);
  new Float64Array(engine.memory.buffer, engine.circle.value, circles.length).set(circles);
  engine.setField(field.radius, field.edge);
  return { ...bed, field };
}

export function countOf({ engine }: Bed): number {
  return engine.count.value;
}

/** The pieces as they lie, in the engine's own memory: good until it is asked to do something. */
export function piecesOf({ engine }: Bed): Readonly<Pieces> {
  const { buffer } = engine.memory;
  const count = engine.count.value;
  return {
    count,
    kind: new Int32Array(buffer, engine.kind.value, count),
    x: new Float64Array(buffer, engine.x.value, count),
    y: new Float64Array(buffer, engine.y.value, count),
    cosine: new Float64Array(buffer, engine.cosine.value, count),
    sine: new Float64Array(buffer, engine.sine.value, count),
  };
}

/** Adds a piece. */
export function add({ engine }: Bed, kind: number, x: number, y: number, cosine: number, sine: number): void {
  engine.put(engine.count.value, kind, x, y, cosine, sine);
}

/** Takes piece `i` away; the last piece gets its number. */
export function remove(bed: Bed, i: number): void {
  const { count, kind, x, y, cosine, sine } = piecesOf(bed);
  const last = count - 1;
  if (i !== last) bed.engine.put(i, kind[last]!, x[last]!, y[last]!, cosine[last]!, sine[last]!);
  bed.engine.leave(last);
  bed.engine.forgetNeighbours();
}

/** The pieces as they lie, to come back to. */
export function snapshot(bed: Bed): Pieces {
  const { count, kind, x, y, cosine, sine } = piecesOf(bed);
  return { count, kind: kind.slice(), x: x.slice(), y: y.slice(), cosine: cosine.slice(), sine: sine.slice() };
}

/** Lays the pieces as they lay when `from` was taken. */
export function restore({ engine }: Bed, { count, kind, x, y, cosine, sine }: Pieces): void {
  engine.leave(0);
  for (let i = 0; i < count; i++) engine.put(i, kind[i]!, x[i]!, y[i]!, cosine[i]!, sine[i]!);
  engine.forgetNeighbours();
}
