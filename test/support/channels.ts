import type { Point } from "../../packages/casting-core/src/geometry/types.js";
import { type Channels, openChannels } from "../../packages/casting-core/src/grooves/area/channels.js";
import type { Place } from "../../packages/casting-core/src/wasm.js";

/** What the compiled area of channels is made up of, each by itself: see `packages/casting-core/channels`. */
interface Parts extends Channels {
  addBar(x: number, y: number, ux: number, uy: number, length: number): void;
  add(from: number, to: number): void;
  forget(left: number): void;
  leaveFree(first: number, from: number, to: number): void;
  readonly intervals: Place;
  readonly ends: Place;
  arcInDisc(x: number, y: number, r: number, ox: number, oy: number, radius: number): void;
  arcInBar(x: number, y: number, r: number, bar: number, half: number): void;
  lineInDisc(x: number, y: number, bar: number, ox: number, oy: number, radius: number): void;
  lineInBar(x: number, y: number, bar: number, other: number, half: number): void;
  arcArea(x: number, y: number, r: number, from: number, to: number): number;
  drawLines(width: number): void;
  findNear(x: number, y: number, far: number): void;
  readonly nearDiscs: Place;
  readonly nearDisc: Place;
  readonly nearBars: Place;
  readonly nearBar: Place;
  readonly discs: Place;
  readonly discX: Place;
  readonly discY: Place;
  readonly bars: Place;
  readonly barX: Place;
  readonly barY: Place;
  readonly alongX: Place;
  readonly alongY: Place;
  readonly length: Place;
}

/** From, to: along a line in mm, or round a circle in radians (0 to 2π). */
export type Interval = [number, number];

/** A straight part of a channel: start, unit direction, length. */
export interface Bar {
  x: number;
  y: number;
  ux: number;
  uy: number;
  length: number;
}

const parts = openChannels([]) as Parts;

/** The intervals that `work` leaves, where `bars` are those numbered from 0 on. */
function left(bars: readonly Bar[], work: () => void): Interval[] {
  parts.openStrips(0, bars.length);
  for (const { x, y, ux, uy, length } of bars) parts.addBar(x, y, ux, uy, length);
  parts.forget(0);
  work();
  const ends = new Float64Array(parts.memory.buffer, parts.ends.value, 2 * parts.intervals.value);
  return Array.from({ length: ends.length / 2 }, (_, n): Interval => [ends[2 * n]!, ends[2 * n + 1]!]);
}

/** What `covered` leaves free between `from` and `to`, behind what is in the row before. */
export const free = (covered: readonly Interval[], from: number, to: number, before: readonly Interval[] = []) =>
  left([], () => {
    for (const interval of [...before, ...covered]) parts.add(...interval);
    parts.leaveFree(before.length, from, to);
  });

export const arcInDisc = (x: number, y: number, r: number, ox: number, oy: number, radius: number) =>
  left([], () => parts.arcInDisc(x, y, r, ox, oy, radius));

export const arcInBar = (x: number, y: number, r: number, bar: Bar, half: number) =>
  left([bar], () => parts.arcInBar(x, y, r, 0, half));

export const lineInDisc = (x: number, y: number, bar: Bar, ox: number, oy: number, radius: number) =>
  left([bar], () => parts.lineInDisc(x, y, 0, ox, oy, radius));

export const lineInBar = (x: number, y: number, bar: Bar, other: Bar, half: number) =>
  left([bar, other], () => parts.lineInBar(x, y, 0, 1, half));

export const arcArea = parts.arcArea;

/** The discs and bars of `lines`, and which of them are found near a place. */
export function drawn(lines: readonly (readonly Point[])[], width: number) {
  const own = openChannels(lines) as Parts;
  own.drawLines(width);
  const floats = (name: "discX" | "discY" | "barX" | "barY" | "alongX" | "alongY" | "length", count: number) =>
    new Float64Array(own.memory.buffer, own[name].value, count);
  const numbers = (name: "nearDisc" | "nearBar", count: number) => [
    ...new Int32Array(own.memory.buffer, own[name].value, count),
  ];
  const [discX, discY] = [floats("discX", own.discs.value), floats("discY", own.discs.value)];
  const [barX, barY] = [floats("barX", own.bars.value), floats("barY", own.bars.value)];
  const [alongX, alongY] = [floats("alongX", own.bars.value), floats("alongY", own.bars.value)];
  const length = floats("length", own.bars.value);
  return {
    discs: Array.from(discX, (x, d): Point => [x, discY[d]!]),
    bars: Array.from(barX, (x, b): Bar => ({ x, y: barY[b]!, ux: alongX[b]!, uy: alongY[b]!, length: length[b]! })),
    near(x: number, y: number, far: number): { discs: number[]; bars: number[] } {
      own.findNear(x, y, far);
      return { discs: numbers("nearDisc", own.nearDiscs.value), bars: numbers("nearBar", own.nearBars.value) };
    },
  };
}
