import { atan2, hypot, TAU } from "../trig.js";
import { arcArea, arcInBar, arcInDisc, type Bar, free, type Interval } from "./intervals.js";
import type { Disc, Near } from "./strips.js";

/**
 * What the disc of radius `half` at a bend adds to the channels' area, mm² (as arcArea): its own two parts leave only the
 * arc between their outer sides open, and others may cover some of that. Nothing is returned where a line ends or turns
 * nearly back: there the whole circle is to be looked at.
 */
export function bendArea(disc: Disc, near: Near, half: number, radius: number): number | undefined {
  const { x, y, before, after } = disc;
  if (!before || !after) return undefined;
  const turn = atan2(before.ux * after.uy - before.uy * after.ux, before.ux * after.ux + before.uy * after.uy);
  const long = Math.abs(turn);
  // From one outer normal to the other, anticlockwise.
  const first = turn > 0 ? before : after;
  const last = turn > 0 ? after : before;
  const side = turn > 0 ? half : -half;
  const fromX = side * first.uy;
  const fromY = -side * first.ux;
  const toX = side * last.uy;
  const toY = -side * last.ux;
  const length = hypot(fromX + toX, fromY + toY);
  if (length < half) return undefined;
  const middleX = x + (half * (fromX + toX)) / length;
  const middleY = y + (half * (fromY + toY)) / length;
  const reach = (half * long) / 2;

  const out = hypot(middleX, middleY) - radius;
  if (out >= reach) return 0;
  const covered: Interval[] = [];
  if (out > -reach) {
    const inside: Interval[] = [];
    arcInDisc(x, y, half, 0, 0, radius, inside);
    covered.push(...free(inside, 0, TAU));
  }
  const { discs, bars } = near(middleX, middleY, reach);
  for (const other of discs) {
    if (other === disc) continue;
    const distance = hypot(middleX - other.x, middleY - other.y);
    if (distance <= half - reach) return 0;
    if (distance < half + reach) arcInDisc(x, y, half, other.x, other.y, half, covered);
  }
  for (const bar of bars) {
    if (bar === before || bar === after) continue;
    const distance = besideBar(middleX, middleY, bar);
    if (distance <= half - reach) return 0;
    if (distance < half + reach) arcInBar(x, y, half, bar, half, covered);
  }
  if (covered.length === 0) return (half * half * long + x * (toY - fromY) - y * (toX - fromX)) / 2;
  const angle = atan2(fromY, fromX);
  const from = angle < 0 ? angle + TAU : angle;
  const to = from + long;
  const shown = [...free(covered, from, Math.min(TAU, to)), ...(to > TAU ? free(covered, 0, to - TAU) : [])];
  return shown.reduce((sum, [a, b]) => sum + arcArea(x, y, half, a, b), 0);
}

/** Distance of (x, y) from a bar's line within its ends. */
function besideBar(x: number, y: number, bar: Bar): number {
  const along = (x - bar.x) * bar.ux + (y - bar.y) * bar.uy;
  const t = Math.max(0, Math.min(bar.length, along));
  return hypot(x - bar.x - t * bar.ux, y - bar.y - t * bar.uy);
}
