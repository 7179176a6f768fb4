import fc from "fast-check";
import type { Point } from "../../packages/casting-core/src/geometry/types.js";
import type { Link } from "../../packages/casting-core/src/grooves/network/graph.js";

/** Places in whole millimetres, no coordinate beyond `most`. */
export const places = (most: number) =>
  fc.tuple(fc.integer({ min: -most, max: most }), fc.integer({ min: -most, max: most })) as fc.Arbitrary<Point>;

/** Random links among a few nodes, loops among them. */
export const links = fc
  .array(fc.tuple(fc.nat(6), fc.nat(6), fc.integer({ min: 1, max: 30 })), { minLength: 1, maxLength: 12 })
  .map((list) => list.map(([a, b, length]): Link => ({ a, b, length })));
