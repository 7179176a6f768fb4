import type { PieceKind } from "../pieces/types.js";

/**
 * Which kind each next piece is: the first N of the list are the mix of a layout of N pieces, for every N up to
 * `length` (shorter where the stock ends first). With shares, each kind gets its share of the count by the
 * Webster/Sainte-Laguë rule, which never takes a piece from a kind when the count grows; a missing share takes an equal
 * part of what is left, and a kind whose stock is used up leaves its turn to the others. Without any share, kinds with
 * stock come first until they are used up, then the others evenly.
 */
export function mixOf(kinds: readonly PieceKind[], length: number): Int32Array {
  const weights = weightsOf(kinds);
  const left = kinds.map((kind) => kind.stock ?? Infinity);
  const laid = kinds.map(() => 0);
  const list = new Int32Array(length);
  let n = 0;
  while (n < length) {
    let next = -1;
    let best = -1;
    for (let k = 0; k < kinds.length; k++) {
      if (laid[k]! >= left[k]!) continue;
      const claim = weights[k]! / (2 * laid[k]! + 1);
      if (claim > best) {
        best = claim;
        next = k;
      }
    }
    if (next < 0) break;
    laid[next]!++;
    list[n++] = next;
  }
  return list.subarray(0, n);
}

/** Weight that puts a kind's whole stock before all others: above any share times the largest count. */
const FIRST = 1e9;

function weightsOf(kinds: readonly PieceKind[]): number[] {
  if (kinds.every((kind) => kind.share === undefined)) {
    return kinds.map((kind) => (kind.stock === undefined ? 1 : FIRST));
  }
  const given = kinds.reduce((sum, kind) => sum + (kind.share ?? 0), 0);
  const open = kinds.filter((kind) => kind.share === undefined).length;
  return kinds.map((kind) => kind.share ?? Math.max(0, 1 - given) / open);
}
