import type { Fault } from "../errors.js";
import { grainNamed } from "../grains.js";
import { fineLength } from "../units/figure-text.js";
import { fault } from "./fault.js";
import type { Job } from "./types.js";

/** A change of this many standard errors tells a rate: about 95 % (JCGM 100:2008, 6.2). */
const SURE = 2;

/** Grains that do not get finer. */
export function gradeFaults({ setup }: Pick<Job, "setup">): Fault[] {
  const faults: Fault[] = [];
  let before = setup.grain;
  setup.grades?.forEach(({ grain }, index) => {
    if (grainNamed(grain)!.size >= grainNamed(before)!.size) {
      const text = `${grain} is no finer than ${before} before it; write the grades from coarse to fine`;
      faults.push(fault(["setup", "grades", index, "grain"], text));
    }
    before = grain;
  });
  return faults;
}

/** A rate that its own error swallows. */
export function rateFaults({ setup, units }: Pick<Job, "setup" | "units">): Fault[] {
  if (!setup.rate || Math.abs(setup.rate.change) > SURE * setup.rate.error) return [];
  const { change, error } = setup.rate;
  const text = `a change of ${fineLength(change, units)} is no more than twice its error of ${fineLength(error, units)} and tells no rate; grind longer between the two readings`;
  return [fault(["setup", "rate", "change"], text)];
}
