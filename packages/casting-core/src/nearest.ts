/** What is called `written` among `rows`, in any case and with space around it, if anything is. */
export function known<T>(written: string | undefined, rows: readonly T[], name: (row: T) => string): T | undefined {
  // What could not be read of a job is called nothing.
  const plain = written?.trim().toLowerCase();
  return rows.find((row) => name(row).toLowerCase() === plain);
}

/**
 * The name among `names` that takes the fewest single-letter edits from `wrong`, or nothing where even that one takes
 * more than half its letters; of several the one whose last number is nearest. Case and the marks between words do not count.
 */
export function nearest(wrong: string, names: Iterable<string>): string | undefined {
  const plain = bare(wrong.slice(0, 64));
  let best: string | undefined;
  let least = Infinity;
  for (const name of names) {
    const other = bare(name);
    const most = Math.min(least, Math.max(name.length, plain.length) / 2);
    // It takes at least the letters by which one is longer: most names of a long list are not looked at.
    if (Math.abs(other.length - plain.length) > most) continue;
    const distance = edits(plain, other);
    const nearer = distance === least && numbersApart(name, plain) < numbersApart(best ?? "", plain);
    if ((distance < least || nearer) && distance <= most) {
      best = name;
      least = distance;
    }
  }
  return best;
}

/** The names that hold the most of the words of `written`, none where none holds any. */
export function holding(written: string, names: readonly string[]): string[] {
  // Of a nut called 1/4-20 the thread's pitch is no part of a name here.
  const plain = written
    .trim()
    .toLowerCase()
    .replace(/^(\d+(?:\/\d+)?)-\d+\b/, "$1");
  const words = plain.split(/[\s,]+/);
  const held = names.map((name) => words.filter((word) => `-${name}-`.includes(`-${word}-`)).length);
  const most = Math.max(...held);
  return most === 0 ? [] : names.filter((_, n) => held[n] === most);
}

/** How far the last numbers of two names are apart; NaN where one has none. */
function numbersApart(a: string, b: string): number {
  const [x, y] = [a, b].map((name) => Number(/(\d+)\D*$/.exec(name)?.[1] ?? Number.NaN));
  return Math.abs(x! - y!);
}

function bare(name: string): string {
  return name.toLowerCase().replace(/[\s_-]+/g, "-");
}

/** Edit distance: insertions, deletions, exchanges of one letter, and two neighbours swapped (Damerau 1964). */
function edits(a: string, b: string): number {
  let before: number[] = [];
  let above = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const exchanged = above[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1);
      const swaps = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      row.push(Math.min(above[j]! + 1, row[j - 1]! + 1, exchanged, swaps ? before[j - 2]! + 1 : Infinity));
    }
    before = above;
    above = row;
  }
  return above[b.length]!;
}
