import type { Point } from "../../geometry/types.js";
import { type Compiled, opener, type Place } from "../../wasm.js";
import { CHANNELS_CODE } from "./channels-code.js";

/** The compiled area of channels (see `packages/casting-core/channels`, where each is described). */
export interface Channels extends Compiled {
  readonly points: Place;
  readonly lineEnd: Place;
  openStrips(lines: number, count: number): void;
  area(width: number, radius: number): number;
}

/** A new one with a memory of its own, nothing opened in it yet. */
const newChannels = opener<Channels>(CHANNELS_CODE);

/** The channels along `lines`, in a memory of their own, nothing worked out yet. */
export function openChannels(lines: readonly (readonly Point[])[]): Channels {
  const channels = newChannels();
  const count = lines.reduce((sum, line) => sum + line.length, 0);
  channels.openStrips(lines.length, count);
  const points = new Float64Array(channels.memory.buffer, channels.points.value, 2 * count);
  const lineEnd = new Int32Array(channels.memory.buffer, channels.lineEnd.value, lines.length);
  let end = 0;
  for (let n = 0; n < lines.length; n++) {
    for (const [x, y] of lines[n]!) {
      points[2 * end] = x;
      points[2 * end + 1] = y;
      end++;
    }
    lineEnd[n] = end;
  }
  return channels;
}
