import Flatbush from "flatbush";
import { boxOf } from "../geometry/polygon.js";
import type { Point } from "../geometry/types.js";
import type { Piece } from "./measure.js";

/** The pieces whose box comes within a distance (mm) of the box of some points; all of them within Infinity. */
export type Near = (points: readonly Point[], within: number) => Piece[];

/** Looks pieces up by where they lie, so that a plan of thousands is measured without comparing each with all. */
export function nearOf(pieces: readonly Piece[]): Near {
  if (pieces.length === 0) return () => [];
  const index = new Flatbush(pieces.length);
  for (const piece of pieces) index.add(...boxOf(spanOf(piece)));
  index.finish();
  return (points, within) => {
    const [left, low, right, high] = boxOf(points);
    return index.search(left - within, low - within, right + within, high + within).map((n) => pieces[n]!);
  };
}

/** Points that span a piece. */
export function spanOf({ x, y, radius, outline }: Piece): readonly Point[] {
  if (radius === undefined) return outline;
  return [
    [x - radius, y - radius],
    [x + radius, y + radius],
  ];
}
