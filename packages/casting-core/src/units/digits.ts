/** Significant digits that a figure carries, in a job and in a plan: below them differ the last bits of long sums. */
const DIGITS = 12;

/** `value` to as many digits as a job and a plan carry. */
export function kept(value: number): number {
  return Number(value.toPrecision(DIGITS));
}

/** Below this many, counts are whole numbers of the kind that engines reckon with fastest. */
const MOST = 0x7fffffff;
/** What stands behind the whole number of so many thousandths. */
const BEHIND = Array.from({ length: 1000 }, (_, count) => String(count / 1000).slice(1));

/**
 * A whole number of thousandths as `String` writes it, without trailing zeros or a minus zero. Coordinates are by far the
 * most of what is written, and to write a fraction takes twice as long as a whole number and what stands behind it.
 */
export function thousandths(count: number): string {
  if (count < 0) return `-${thousandths(-count)}`;
  if (!(count < MOST)) return String(count / 1000);
  const whole = Math.floor(count / 1000);
  return whole + BEHIND[count - 1000 * whole]!;
}
