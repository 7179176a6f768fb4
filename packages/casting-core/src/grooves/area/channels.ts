import type { Point } from "../../geometry/types.js";
import { type Strips, withLines } from "../../strips.js";
import { opener } from "../../wasm.js";
import { CHANNELS_CODE } from "./channels-code.js";

/** The compiled area of channels (see `packages/casting-core/channels`, where each is described). */
export interface Channels extends Strips {
  area(width: number, radius: number): number;
}

/** A new one with a memory of its own, nothing opened in it yet. */
const newChannels = opener<Channels>(CHANNELS_CODE);

/** The channels along `lines`, in a memory of their own, nothing worked out yet. */
export function openChannels(lines: readonly (readonly Point[])[]): Channels {
  return withLines(newChannels(), lines);
}
