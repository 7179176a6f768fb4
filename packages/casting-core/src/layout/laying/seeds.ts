import PoissonDiskSampling from "poisson-disk-sampling";
import type { Random } from "../../random.js";
import { sinCos, TAU } from "../../trig.js";
import { add, type Bed } from "./bed.js";

/** Points that Poisson-disk sampling puts in an area of (least distance)², measured for this sampler. */
const SATURATION = 0.7;

/** Puts a piece of each of `kinds` in turn on an empty bed, at Poisson-disk seeds and random turns. */
export function seedBed(bed: Bed, kinds: ArrayLike<number>, source: Random): void {
  const points = seedPoints(bed.field.radius, kinds.length, source);
  for (let i = 0; i < kinds.length; i++) {
    const [x, y] = points[i]!;
    const [s, c] = sinCos(TAU * source.next());
    add(bed, kinds[i]!, x, y, c, s);
  }
}

/** `count` points in the circle of `radius`, evenly spread by Poisson-disk sampling, in random order. */
export function seedPoints(radius: number, count: number, source: Random): [number, number][] {
  const side = 2 * radius;
  const minDistance = Math.sqrt((SATURATION * Math.PI * radius * radius) / count);
  const sampler = new PoissonDiskSampling(
    { shape: [side, side], minDistance, maxDistance: 2 * minDistance, tries: 12 },
    () => source.next(),
  );
  const points: [number, number][] = [];
  for (const point of sampler.fill()) {
    // The sampler uses the engine's own sine: whole micrometres keep its last digit out of the layout.
    const x = Math.round((point[0]! - radius) * 1000) / 1000;
    const y = Math.round((point[1]! - radius) * 1000) / 1000;
    if (x * x + y * y < radius * radius) points.push([x, y]);
  }
  shuffle(points, source);
  while (points.length < count) {
    const x = (source.next() * 2 - 1) * radius;
    const y = (source.next() * 2 - 1) * radius;
    if (x * x + y * y < radius * radius) points.push([x, y]);
  }
  return points.slice(0, count);
}

function shuffle<T>(list: T[], source: Random): void {
  for (let i = list.length - 1; i > 0; i--) {
    const j = source.index(i + 1);
    const kept = list[i]!;
    list[i] = list[j]!;
    list[j] = kept;
  }
}
