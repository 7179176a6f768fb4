import { GLASSES, glassOf } from "../blank/glass.js";
import { nearest } from "../nearest.js";
import { type Note, note } from "../notes.js";
import type { Job } from "./types.js";

/** What a job leaves open or says in vain: allowed, but it tells less than its writer may think. */
export function unusedNotes({ blank: { readings, material }, socket }: Job): Note[] {
  const notes: Note[] = [];
  if (material !== undefined && !glassOf(material)) {
    const names = GLASSES.map((glass) => glass.material);
    const near = nearest(material, names);
    const remedy = near ? `${near}, if it is that,` : `one of ${names.join(", ")}`;
    const text = `The glass given as blank.material is not known, so that nothing is reckoned with it: write ${remedy} for its weight and for how warmth bends it.`;
    notes.push(note("info", "material-unknown", text));
  }
  if (readings) {
    const { instrument, zones } = readings;
    if (zones.length === 1) {
      const text =
        "One reading alone gives a radius, but its spread is unknown: read at several places, and the blank turned, to see whether the curve is a sphere.";
      notes.push(note("info", "one-reading", text));
    }
    const open = zones.filter(({ along }) => along === undefined).length;
    if (instrument.bar !== undefined && zones.length > 1 && open > 0) {
      const text = `${open} of ${zones.length} readings with a bar lack their direction, so that nothing is told of a curve that differs by direction: write along, in degrees, beside each reading of a job.`;
      notes.push(note("info", "no-direction", text));
    }
    if (instrument.bar === undefined && open < zones.length) {
      const what = instrument.ring === undefined ? "Three legs see" : "A ring sees";
      const text = `${what} the mean curvature only, so that along, a bar's own direction, is not used: leave it out; where a reading stood is told by at and angle.`;
      notes.push(note("info", "along-unused", text));
    }
    if (instrument.wall !== undefined && instrument.ball !== undefined) {
      const text =
        "The ring's wall is not used, since the ring stands on balls: leave out wall, or ball where there are none.";
      notes.push(note("info", "wall-unused", text));
    }
  }
  if (socket?.plugged === false && socket.bore === undefined) {
    const text =
      "The socket is said to be open (plugged: false) but has no bore, and is reckoned as solid: write socket.bore for the plaster that runs into it.";
    notes.push(note("warning", "open-without-bore", text));
  }
  return notes;
}
