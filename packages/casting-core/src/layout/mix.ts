import type { PieceKind } from "../pieces/types.js";

/**
 * Which kind each next piece is: the first N of the list are the mix of a layout of N pieces, for every N up to
 * `length` (shorter where the stock ends first). With shares, each kind gets its share of the count by the
 * Webster/Sainte-Laguë rule, which never takes a piece from a kind when the count grows; a missing share takes an equal
 * part of what is left. What a used-up kind no longer takes goes to those without a share, and only where there are none
 * to all others. Without any share, kinds with stock come first until they are used up, then the others evenly.
 */
export function mixOf(kinds: readonly PieceKind[], length: number): Int32Array {
  const laid = kinds.map(() => 0);
  let terms = termsOf(kinds, laid);
  const list = new Int32Array(length);
  let n = 0;
  while (n < length) {
    let next = -1;
    let best = -1;
    for (const { k, weight, ahead } of terms) {
      const claim = weight / (2 * (laid[k]! + ahead) + 1);
      if (claim > best) {
        best = claim;
        next = k;
      }
    }
    if (next < 0) break;
    laid[next]!++;
    list[n++] = next;
    if (laid[next] === kinds[next]!.stock) terms = termsOf(kinds, laid);
  }
  return list.subarray(0, n);
}

/** What a kind that is not used up lays claim to: its weight, and how many count as laid of it beside its own. */
interface Term {
  k: number;
  weight: number;
  ahead: number;
}

/** Weight that puts a kind's whole stock before all others: above any share times the largest count. */
const FIRST = 1e9;

function termsOf(kinds: readonly PieceKind[], laid: readonly number[]): Term[] {
  const left = kinds.flatMap(({ share, stock }, k) => (laid[k] === stock ? [] : [{ k, share, stock }]));
  if (kinds.every(({ share }) => share === undefined)) {
    return left.map(({ k, stock }) => ({ k, weight: stock === undefined ? 1 : FIRST, ahead: 0 }));
  }
  const given = left.reduce((sum, { share = 0 }) => sum + share, 0);
  const open = left.filter(({ share }) => share === undefined).length;
  // Used-up pieces stay part of the count that shares are of: those who take what is left of it begin so much later.
  const gone = laid.reduce((sum, count, k) => sum + (count === kinds[k]!.stock ? count : 0), 0);
  return left.map(({ k, share }) =>
    share === undefined
      ? { k, weight: Math.max(0, 1 - given) / open, ahead: gone / open }
      : { k, weight: share, ahead: 0 },
  );
}
