import type { Fault } from "../errors.js";
import { fault, mmIn } from "./fault.js";
import type { Job, JobCurve } from "./types.js";
import { faultsOfEach } from "./unread.js";

const CURVES = ["radius", "focal-ratio", "sagitta", "readings"] as const;

/** A curve that is missing, or given twice. */
export function curveFaults({ blank }: Pick<Job, "blank">): Fault[] {
  const given = CURVES.filter((key) => blank[key] !== undefined);
  if (blank.curve === "flat") {
    return given.map((key) => fault(["blank", key], `a flat blank has no ${key}; remove it, or write curve: concave`));
  }
  if (given.length === 0) return [fault(["blank"], `the curve is missing; write one of ${CURVES.join(", ")}`)];
  return given
    .slice(1)
    .map((key) => fault(["blank", key], `the curve is given twice, by ${given[0]} and by ${key}; keep one of them`));
}

/** A chord without a sagitta, or wider than the blank. */
export function chordFaults({ blank, units }: Pick<Job, "blank" | "units">): Fault[] {
  const chord = blank["sagitta-over"];
  if (chord === undefined) return [];
  const at = ["blank", "sagitta-over"];
  const mm = mmIn(units);
  const faults: Fault[] = [];
  if (blank.sagitta === undefined)
    faults.push(fault(at, "there is no sagitta that was measured over it; write sagitta, or remove it"));
  if (chord > blank.diameter) {
    faults.push(fault(at, `a chord of ${mm(chord)} is wider than the blank of ${mm(blank.diameter)}; check both`));
  }
  return faults;
}

/** A bevel leaves a face inside it, and glass below it. */
export function bevelFaults({ blank, units }: Pick<Job, "blank" | "units">): Fault[] {
  const { bevel, diameter } = blank;
  if (bevel === undefined) return [];
  const mm = mmIn(units);
  const refused = (leaves: string) => [
    fault(["blank", "bevel"], `a bevel of ${mm(bevel)} leaves ${leaves}; check both figures and their units`),
  ];
  if (2 * bevel >= diameter) return refused(`no face on a blank of ${mm(diameter)}`);
  if (blank.thickness !== undefined && bevel >= blank.thickness)
    return refused(`no side of a blank ${mm(blank.thickness)} thick`);
  return [];
}

/** A blank deeper than a hemisphere. */
export function blankDepthFaults({ blank, units }: Pick<Job, "blank" | "units">): Fault[] {
  return hemisphereFaults(blank, blank["sagitta-over"] ?? blank.diameter, ["blank"], mmIn(units));
}

/** A target of a flat. */
export function flatTargetFaults({ blank }: Pick<Job, "blank">): Fault[] {
  if (blank.curve !== "flat" || !blank.target) return [];
  return [fault(["blank", "target"], "a flat blank has no other curve to reach; remove the target")];
}

/** A target that is empty, given twice, or deeper than a hemisphere. */
export function targetFaults({ blank, units }: Pick<Job, "blank" | "units">): Fault[] {
  const { target, diameter } = blank;
  if (!target) return [];
  const at = ["blank", "target"];
  const wanted = (["radius", "focal-ratio", "sagitta"] as const).filter((key) => target[key] !== undefined);
  const faults: Fault[] = [];
  if (wanted.length === 0) faults.push(fault(at, "the target is empty; write radius, focal-ratio or sagitta below it"));
  for (const key of wanted.slice(1)) {
    faults.push(fault([...at, key], `the target is given twice, by ${wanted[0]} and by ${key}; keep one of them`));
  }
  return [...faults, ...hemisphereFaults({ ...target, diameter }, diameter, at, mmIn(units))];
}

/** No sphere is smaller than the blank that lies in it: R at least half the diameter, a sagitta at most half the chord. */
function hemisphereFaults(
  curve: JobCurve & { diameter: number },
  chord: number,
  path: string[],
  mm: (value: number) => string,
): Fault[] {
  const { radius, diameter, sagitta } = curve;
  const ratio = curve["focal-ratio"];
  if (radius !== undefined && radius < diameter / 2) {
    const text = `a radius of ${mm(radius)} is less than half the blank of ${mm(diameter)}; check both figures and their units`;
    return [fault([...path, "radius"], text)];
  }
  if (ratio !== undefined && ratio < 0.25) {
    return [fault([...path, "focal-ratio"], `a focal ratio of ${ratio} is deeper than a hemisphere; check the figure`)];
  }
  if (sagitta !== undefined && sagitta > chord / 2) {
    const text = `a sagitta of ${mm(sagitta)} over ${mm(chord)} is deeper than a hemisphere; check both figures and their units`;
    return [fault([...path, "sagitta"], text)];
  }
  return [];
}

/** An instrument that is none, and readings off the blank. */
export function readingFaults({ blank, units }: Pick<Job, "blank" | "units">): Fault[] {
  const { readings } = blank;
  if (!readings) return [];
  const mm = mmIn(units);
  const path = ["blank", "readings"];
  const { instrument, zones } = readings;
  const spans = (["ring", "legs", "bar"] as const).filter((key) => instrument[key] !== undefined);
  const faults: Fault[] = [];
  if (spans.length === 0) faults.push(fault([...path, "instrument"], "its size is missing; write ring, legs or bar"));
  for (const key of spans.slice(1)) {
    faults.push(
      fault([...path, "instrument", key], `it stands beside ${spans[0]}; an instrument has one of ring, legs, bar`),
    );
  }
  const span = spans[0] === undefined ? undefined : instrument[spans[0]];
  const { ball, wall } = instrument;
  if (ball !== undefined && span !== undefined && ball >= span) {
    const text = `${mm(ball)} is as wide as the instrument of ${mm(span)}; check both`;
    faults.push(fault([...path, "instrument", "ball"], text));
  }
  if (wall !== undefined && instrument.ring !== undefined && 2 * wall >= instrument.ring) {
    const text = `a wall of ${mm(wall)} leaves no hole in a ring of ${mm(instrument.ring)}; check both`;
    faults.push(fault([...path, "instrument", "wall"], text));
  }
  if (wall !== undefined && instrument.ring === undefined) {
    faults.push(fault([...path, "instrument", "wall"], "only a ring has a wall; remove it, or write ring"));
  }
  const ofZones = faultsOfEach(zones, (zone, index) => {
    const faults: Fault[] = [];
    if (zone.at > blank.diameter / 2) {
      const text = `${mm(zone.at)} from the centre is off the blank of ${mm(blank.diameter)}; check both`;
      faults.push(fault([...path, "zones", index, "at"], text));
    }
    if (spans[0] === "bar" && zone.at > 0 && zone.along === undefined && zone.angle !== undefined) {
      faults.push(
        fault([...path, "zones", index, "along"], "a bar's own direction is missing; write along, in degrees"),
      );
    }
    return faults;
  });
  return [...faults, ...ofZones];
}
