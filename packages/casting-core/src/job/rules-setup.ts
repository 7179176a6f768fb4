import type { Fault } from "../errors.js";
import { grainNamed } from "../grains.js";
import { fault, mmIn } from "./fault.js";
import type { Job } from "./types.js";

/** A change of this many standard errors tells a rate: about 95 % (JCGM 100:2008, 6.2). */
const SURE = 2;

/** What the first pass may not say: grains that do not get finer, and a rate that its own error swallows. */
export function setupFaults({ setup, units }: Pick<Job, "setup" | "units">): Fault[] {
  const mm = mmIn(units);
  const faults: Fault[] = [];
  let before = setup.grain;
  setup.grades?.forEach(({ grain }, index) => {
    if (grainNamed(grain)!.size >= grainNamed(before)!.size) {
      const text = `${grain} is no finer than ${before} before it; write the grades from coarse to fine`;
      faults.push(fault(["setup", "grades", index, "grain"], text));
    }
    before = grain;
  });
  if (setup.rate && Math.abs(setup.rate.change) <= SURE * setup.rate.error) {
    const { change, error } = setup.rate;
    const text = `a change of ${mm(change)} is no more than twice its error of ${mm(error)} and tells no rate; grind longer between the two readings`;
    faults.push(fault(["setup", "rate", "change"], text));
  }
  return faults;
}
