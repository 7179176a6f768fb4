import { uniformInt } from "pure-rand/distribution/uniformInt";
import { xoroshiro128plus } from "pure-rand/generator/xoroshiro128plus";

/** A seeded source of numbers: the same seed gives the same numbers on every machine. */
export interface Random {
  /** A number in [0, 1), in steps of 2⁻³². */
  next(): number;
  /** A whole number from 0 to `below` − 1. */
  index(below: number): number;
}

/** A source for one purpose: `stream` keeps the draws of one stage from shifting those of another. */
export function random(seed: number, stream = 0): Random {
  const generator = xoroshiro128plus((seed ^ Math.imul(stream + 1, 0x9e3779b1)) | 0);
  const next = (): number => (generator.next() >>> 0) / 4294967296;
  return { next, index: (below) => uniformInt(generator, 0, below - 1) };
}
