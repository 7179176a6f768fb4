import type { Bed } from "./bed.js";

/** Pairs of pieces near enough to touch soon: those of piece `i` stand at `start[i]` to `start[i + 1]` of `other`. */
export interface Neighbours {
  start: Int32Array;
  other: Int32Array;
  /** The edge that last separated the pair; −1 if none is known. */
  hint: Int16Array;
  /** The other piece's corner nearest to that edge. */
  corner: Int16Array;
  /** Where the pieces were when the pairs were listed. */
  x: Float64Array;
  y: Float64Array;
  count: number;
  skin: number;
  /** The lists before the last, swapped in when pairs are listed anew; what each piece's pair knew in them. */
  older: { start: Int32Array; other: Int32Array; hint: Int16Array; corner: Int16Array };
  knownBy: Int32Array;
  knownAt: Int32Array;
  /** Scratch of the grid: each piece's cell, the pieces cell by cell, where each cell begins and how far it is filled. */
  cellOf: Int32Array;
  members: Int32Array;
  cellStart: Int32Array;
  filled: Int32Array;
}

const CROWD = 24; // pairs to allow for per piece at first; the list grows when it is full

export function newNeighbours(capacity: number): Neighbours {
  return {
    ...pairLists(capacity),
    x: new Float64Array(capacity),
    y: new Float64Array(capacity),
    count: -1,
    skin: 0,
    older: pairLists(capacity),
    knownBy: new Int32Array(capacity),
    knownAt: new Int32Array(capacity),
    cellOf: new Int32Array(capacity),
    members: new Int32Array(capacity),
    cellStart: new Int32Array(0),
    filled: new Int32Array(0),
  };
}

function pairLists(capacity: number) {
  return {
    start: new Int32Array(capacity + 1),
    other: new Int32Array(capacity * CROWD),
    hint: new Int16Array(capacity * CROWD),
    corner: new Int16Array(capacity * CROWD),
  };
}

/** Lists every pair whose circles of reach come closer than `gap + skin`, by a square grid. */
export function listNeighbours(bed: Bed, list: Neighbours, gap: number, skin: number): void {
  const { count, x, y, kind } = bed;
  const { reach } = bed.shapes;
  let widest = 0;
  for (let k = 0; k < reach.length; k++) widest = Math.max(widest, reach[k]!);
  const cell = 2 * widest + gap + skin;
  const half = bed.field.edge + cell;
  const across = Math.max(1, Math.ceil((2 * half) / cell));
  if (list.cellStart.length <= across * across) {
    list.cellStart = new Int32Array(across * across + 1);
    list.filled = new Int32Array(across * across + 1);
  }
  const { cellOf, members, cellStart, filled } = list;
  cellStart.fill(0);
  for (let i = 0; i < count; i++) {
    const column = Math.max(0, Math.min(across - 1, Math.floor((x[i]! + half) / cell)));
    const row = Math.max(0, Math.min(across - 1, Math.floor((y[i]! + half) / cell)));
    cellOf[i] = row * across + column;
    cellStart[cellOf[i]! + 1]!++;
  }
  for (let c = 0; c < across * across; c++) cellStart[c + 1]! += cellStart[c]!;
  filled.set(cellStart);
  for (let i = 0; i < count; i++) members[filled[cellOf[i]!]!++] = i;

  // What the pairs knew stays known, unless pieces came or went and the numbers mean others now.
  const known = list.count === count;
  const { start, other, hint, corner } = list;
  Object.assign(list, list.older);
  list.older = { start, other, hint, corner };
  const { knownBy, knownAt, start: startOf, x: listedX, y: listedY } = list;
  let { other: others, hint: hints, corner: corners } = list;
  knownBy.fill(-1);
  let n = 0;
  for (let i = 0; i < count; i++) {
    if (known) {
      for (let p = start[i]!; p < start[i + 1]!; p++) {
        knownBy[other[p]!] = i;
        knownAt[other[p]!] = p;
      }
    }
    startOf[i] = n;
    listedX[i] = x[i]!;
    listedY[i] = y[i]!;
    const own = cellOf[i]!;
    const row = Math.floor(own / across);
    const column = own - row * across;
    const near = reach[kind[i]!]! + gap + skin;
    for (let r = Math.max(0, row - 1); r <= Math.min(across - 1, row + 1); r++) {
      const from = cellStart[r * across + Math.max(0, column - 1)]!;
      const to = cellStart[r * across + Math.min(across - 1, column + 1) + 1]!;
      for (let m = from; m < to; m++) {
        const j = members[m]!;
        if (j <= i) continue;
        const dx = x[j]! - x[i]!;
        const dy = y[j]! - y[i]!;
        const limit = near + reach[kind[j]!]!;
        if (dx * dx + dy * dy >= limit * limit) continue;
        if (n === others.length) {
          grow(list);
          ({ other: others, hint: hints, corner: corners } = list);
        }
        others[n] = j;
        const at = knownBy[j] === i ? knownAt[j]! : -1;
        hints[n] = at < 0 ? -1 : hint[at]!;
        corners[n] = at < 0 ? 0 : corner[at]!;
        n++;
      }
    }
  }
  startOf[count] = n;
  list.count = count;
  list.skin = skin;
}

/** Whether a piece has moved so far since the pairs were listed that one may be missing. */
export function outdated(bed: Bed, list: Neighbours): boolean {
  if (list.count !== bed.count) return true;
  const limit = (list.skin / 2) * (list.skin / 2);
  const { x, y } = bed;
  const { x: listedX, y: listedY } = list;
  for (let i = 0; i < bed.count; i++) {
    const dx = x[i]! - listedX[i]!;
    const dy = y[i]! - listedY[i]!;
    if (dx * dx + dy * dy > limit) return true;
  }
  return false;
}

function grow(list: Neighbours): void {
  const longer = pairLists((2 * list.other.length) / CROWD);
  longer.other.set(list.other);
  longer.hint.set(list.hint);
  longer.corner.set(list.corner);
  list.other = longer.other;
  list.hint = longer.hint;
  list.corner = longer.corner;
}
