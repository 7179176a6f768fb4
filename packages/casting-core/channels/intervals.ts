/*
 * Intervals in a row: along a line in mm, or round a circle in radians (0 to 2π). Whoever gathers some begins where the
 * row ends, and lets go of them afterwards.
 */

/** From and to of each interval in turn; longer when it is full. */
export let ends = new StaticArray<f64>(128);
export let intervals: i32 = 0;

/** Appends an interval. */
export function add(from: f64, to: f64): void {
  if (2 * intervals === ends.length) {
    const longer = new StaticArray<f64>(4 * intervals);
    for (let n = 0; n < 2 * intervals; n++) longer[n] = ends[n];
    ends = longer;
  }
  ends[2 * intervals] = from;
  ends[2 * intervals + 1] = to;
  intervals++;
}

/** Lets go of all intervals from number `left` on. */
export function forget(left: i32): void {
  intervals = left;
}

/** Puts in place of the intervals from number `first` on what they leave free between `from` and `to`, in order. */
export function leaveFree(first: i32, from: f64, to: f64): void {
  const last = sort(first, from, to);
  intervals = first;
  let at = from;
  // What is free never takes more room than what has been read.
  for (let n = first; n < last; n++) {
    const start = ends[2 * n];
    const end = ends[2 * n + 1];
    if (start > at) add(at, start);
    if (end > at) at = end;
  }
  if (at < to) add(at, to);
}

/** Sorts the intervals from number `first` on and leaves out what lies beyond `from` and `to`; returns where they end. */
function sort(first: i32, from: f64, to: f64): i32 {
  let last = first;
  // By insertion: there are a handful.
  for (let n = first; n < intervals; n++) {
    const start = ends[2 * n];
    const end = ends[2 * n + 1];
    if (end <= from || start >= to) continue;
    let at = 2 * last;
    for (; at > 2 * first && ends[at - 2] > start; at -= 2) {
      ends[at] = ends[at - 2];
      ends[at + 1] = ends[at - 1];
    }
    ends[at] = start;
    ends[at + 1] = end;
    last++;
  }
  return last;
}
