import { damageOf, GRAINS, type Grain, grainNamed } from "../grains.js";
import type { Job, JobSetup } from "../job/types.js";
import type { Bevel, GrainStep, Removal } from "./types.js";

/** Each grade removes this many sizes of the grain before it (Karow 1993; value from memory; a rule of thumb). */
const DEPTH = 3;
/** Each grain is at most this share of the one before (common practice: about half). */
const STEP = 0.6;
/** Fine grinding ends here, µm (common practice). */
const FINEST = 9.3;
/** The back is bevelled only until it does not cut (common practice), mm. */
const BACK = 1;
/** What a bevel should still measure at the end to protect the edge, mm (common practice). */
export const KEPT = 0.5;

/**
 * The grains from the first one to fine grinding, with what each removes: the maker's own ladder and depths where the
 * job gives them.
 */
export function gradesFrom({ grain, grades }: Pick<JobSetup, "grain" | "grades">): GrainStep[] {
  const first = grainNamed(grain);
  if (!first) return [];
  const given = grades?.flatMap(({ grain: name, depth }) => {
    const found = grainNamed(name);
    return found ? [{ grain: found, depth }] : [];
  });
  const steps: { grain: Grain; depth?: number | undefined }[] = [
    { grain: first },
    ...(given ?? finerThan(first).map((next) => ({ grain: next }))),
  ];
  return steps.map(({ grain: { name, size }, depth }, n) => ({
    name,
    size,
    depth: n === 0 ? 0 : depth === undefined ? DEPTH * steps[n - 1]!.grain.size : depth * 1000,
    damage: damageOf(size),
  }));
}

/** Each next grain about half the one before, to the end of fine grinding. */
function finerThan(first: Grain): Grain[] {
  const steps = [first];
  for (const grain of GRAINS) {
    const last = steps.at(-1)!;
    if (last.size > FINEST && grain.size <= STEP * last.size && grain.size >= FINEST) steps.push(grain);
  }
  return steps.slice(1);
}

/** The front bevel: the edge loses the removal there and every later grade, and a 45° bevel's leg as much. */
export function bevelOf(
  { blank }: Pick<Job, "blank">,
  removal: Removal | undefined,
  grades: readonly GrainStep[],
): Bevel {
  const later = grades.reduce((sum, { depth }) => sum + depth, 0);
  const edge = removal?.zones.at(-1)?.depth ?? 0;
  const edgeRemoval = (edge + later) / 1000;
  const needed = edgeRemoval + KEPT;
  const now = blank.bevel;
  const renew = now === undefined ? undefined : renewalOf(now, edge, grades);
  return {
    back: BACK,
    edgeRemoval,
    needed,
    face: needed * Math.SQRT2,
    ...(now === undefined ? {} : { now, left: Math.max(0, now - edgeRemoval) }),
    ...(renew === undefined ? {} : { renew: renew.grain, renewTo: needed - renew.lost }),
  };
}

/**
 * The first grain during which a leg of `now` mm would fall below what protects the edge, and what the edge has lost
 * before it, mm; nothing where it lasts.
 */
function renewalOf(
  now: number,
  edge: number,
  grades: readonly GrainStep[],
): { grain: string; lost: number } | undefined {
  let lost = 0;
  for (const [n, { name, depth }] of grades.entries()) {
    const then = lost + (n === 0 ? edge : depth) / 1000;
    if (now - then < KEPT - 1e-9) return { grain: name, lost };
    lost = then;
  }
  return undefined;
}
