/** Significant digits that a figure carries, in a job and in a plan: below them differ the last bits of long sums. */
const DIGITS = 12;

/** `value` to as many digits as a job and a plan carry. */
export function kept(value: number): number {
  return Number(value.toPrecision(DIGITS));
}
