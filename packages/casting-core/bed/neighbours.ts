import { count, kind, x, y } from "./pieces";
import { fieldEdge, kinds, reach } from "./shapes";

/*
 * Pairs of pieces near enough to touch soon: those of piece `i` stand at `start[i]` to `start[i + 1]` of `other`.
 */

/** Pairs to allow for per piece at first; the list grows when it is full. */
const CROWD: i32 = 24;

export let start = new StaticArray<i32>(0);
export let other = new StaticArray<i32>(0);
/** The edge that last separated the pair; −1 if none is known. */
export let hint = new StaticArray<i16>(0);
/** The other piece's corner nearest to that edge. */
export let corner = new StaticArray<i16>(0);

/** Where the pieces were when the pairs were listed, how many, and how far they may move until some may be missing. */
let listedX = new StaticArray<f64>(0);
let listedY = new StaticArray<f64>(0);
let listed: i32 = -1;
let listedSkin: f64 = 0;

/** The lists before the last, swapped in when pairs are listed anew; what each piece's pair knew in them. */
let olderStart = new StaticArray<i32>(0);
let olderOther = new StaticArray<i32>(0);
let olderHint = new StaticArray<i16>(0);
let olderCorner = new StaticArray<i16>(0);
let knownBy = new StaticArray<i32>(0);
let knownAt = new StaticArray<i32>(0);

/** Scratch of the grid: each piece's cell, the pieces cell by cell, where each cell begins and how far it is filled. */
let cellOf = new StaticArray<i32>(0);
let members = new StaticArray<i32>(0);
let cellStart = new StaticArray<i32>(0);
let filled = new StaticArray<i32>(0);

/** Makes room for the pairs of `capacity` pieces; none is listed yet. */
export function openNeighbours(capacity: i32): void {
  const pairs = capacity * CROWD;
  start = new StaticArray<i32>(capacity + 1);
  other = new StaticArray<i32>(pairs);
  hint = new StaticArray<i16>(pairs);
  corner = new StaticArray<i16>(pairs);
  olderStart = new StaticArray<i32>(capacity + 1);
  olderOther = new StaticArray<i32>(pairs);
  olderHint = new StaticArray<i16>(pairs);
  olderCorner = new StaticArray<i16>(pairs);
  listedX = new StaticArray<f64>(capacity);
  listedY = new StaticArray<f64>(capacity);
  knownBy = new StaticArray<i32>(capacity);
  knownAt = new StaticArray<i32>(capacity);
  cellOf = new StaticArray<i32>(capacity);
  members = new StaticArray<i32>(capacity);
  listed = -1;
}

/** Pieces came, went or were put elsewhere: their pairs are to be listed anew. */
export function forgetNeighbours(): void {
  listed = -1;
}

/** Lists every pair whose circles of reach come closer than `gap + skin`, by a square grid. */
export function listNeighbours(gap: f64, skin: f64): void {
  const across = sortIntoCells(gap + skin);
  // What the pairs knew stays known, unless pieces came or went and the numbers mean others now.
  const known = listed === count;
  swapLists();
  for (let i = 0; i < count; i++) knownBy[i] = -1;
  let n = 0;
  for (let i = 0; i < count; i++) {
    if (known) {
      for (let p = olderStart[i]; p < olderStart[i + 1]; p++) {
        knownBy[olderOther[p]] = i;
        knownAt[olderOther[p]] = p;
      }
    }
    start[i] = n;
    listedX[i] = x[i];
    listedY[i] = y[i];
    const own = cellOf[i];
    const row = own / across;
    const column = own - row * across;
    const near = reach[kind[i]] + gap + skin;
    const lastRow = min(across - 1, row + 1);
    for (let r = max(0, row - 1); r <= lastRow; r++) {
      const from = cellStart[r * across + max(0, column - 1)];
      const to = cellStart[r * across + min(across - 1, column + 1) + 1];
      for (let m = from; m < to; m++) {
        const j = members[m];
        if (j <= i) continue;
        const dx = x[j] - x[i];
        const dy = y[j] - y[i];
        const limit = near + reach[kind[j]];
        if (dx * dx + dy * dy >= limit * limit) continue;
        if (n === other.length) grow();
        const at = knownBy[j] === i ? knownAt[j] : -1;
        other[n] = j;
        hint[n] = at < 0 ? -1 : olderHint[at];
        corner[n] = at < 0 ? 0 : olderCorner[at];
        n++;
      }
    }
  }
  start[count] = n;
  listed = count;
  listedSkin = skin;
}

/** Sorts the pieces into cells as wide as two pieces reach with `beside` between them; returns the cells in a row. */
function sortIntoCells(beside: f64): i32 {
  let widest: f64 = 0;
  for (let k = 0; k < kinds; k++) widest = Math.max(widest, reach[k]);
  const cell = 2 * widest + beside;
  const half = fieldEdge + cell;
  const across = i32(Math.max(1, Math.ceil((2 * half) / cell)));
  const cells = across * across;
  if (cellStart.length <= cells) {
    cellStart = new StaticArray<i32>(cells + 1);
    filled = new StaticArray<i32>(cells + 1);
  }
  for (let c = 0; c <= cells; c++) cellStart[c] = 0;
  for (let i = 0; i < count; i++) {
    cellOf[i] = lineOf(y[i] + half, cell, across) * across + lineOf(x[i] + half, cell, across);
    cellStart[cellOf[i] + 1]++;
  }
  for (let c = 0; c < cells; c++) {
    cellStart[c + 1] += cellStart[c];
    filled[c] = cellStart[c];
  }
  for (let i = 0; i < count; i++) members[filled[cellOf[i]]++] = i;
  return across;
}

/** The row or column of cells that `place` falls in. */
function lineOf(place: f64, cell: f64, across: i32): i32 {
  return i32(Math.max(0, Math.min(across - 1, Math.floor(place / cell))));
}

function swapLists(): void {
  const wasStart = start;
  const wasOther = other;
  const wasHint = hint;
  const wasCorner = corner;
  start = olderStart;
  other = olderOther;
  hint = olderHint;
  corner = olderCorner;
  olderStart = wasStart;
  olderOther = wasOther;
  olderHint = wasHint;
  olderCorner = wasCorner;
}

/** Twice as much room for pairs. */
function grow(): void {
  const n = other.length;
  const longerOther = new StaticArray<i32>(2 * n);
  const longerHint = new StaticArray<i16>(2 * n);
  const longerCorner = new StaticArray<i16>(2 * n);
  for (let p = 0; p < n; p++) {
    longerOther[p] = other[p];
    longerHint[p] = hint[p];
    longerCorner[p] = corner[p];
  }
  other = longerOther;
  hint = longerHint;
  corner = longerCorner;
}

/** Whether a piece has moved so far since the pairs were listed that one may be missing. */
export function outdated(): bool {
  if (listed !== count) return true;
  const limit = (listedSkin / 2) * (listedSkin / 2);
  for (let i = 0; i < count; i++) {
    const dx = x[i] - listedX[i];
    const dy = y[i] - listedY[i];
    if (dx * dx + dy * dy > limit) return true;
  }
  return false;
}
