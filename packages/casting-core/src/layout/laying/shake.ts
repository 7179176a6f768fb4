import type { Random } from "../../random.js";
import { type Bed, piecesOf } from "./bed.js";

/** Kicks every piece by up to `size` times its reach in each direction, and turns it by up to `size` radians. */
export function shake(bed: Bed, source: Random, size: number): void {
  const { engine, shapes } = bed;
  const { count, kind } = piecesOf(bed);
  const draws = new Float64Array(engine.memory.buffer, engine.draws.value, 3 * count);
  for (let i = 0; i < count; i++) {
    draws[3 * i] = source.next();
    draws[3 * i + 1] = source.next();
    if (shapes.fold[kind[i]!] !== 0) draws[3 * i + 2] = source.next();
  }
  engine.shake(size);
}
