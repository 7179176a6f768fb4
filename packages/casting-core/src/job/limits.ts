/** What a field may be (refused outside) and what it usually is (noted outside, except 0). Common practice throughout. */
export interface FieldLimits {
  least: number;
  most: number;
  usual: readonly [least: number, most: number];
  /** As a maker would write it. */
  example: string;
}

function field(least: number, most: number, usual: readonly [number, number], example: string): FieldLimits {
  return { least, most, usual, example };
}

/** Limits of every figure of a job by its path, list indices left out. Lengths mm, volumes mL, masses kg. */
export const LIMITS = {
  "blank.diameter": field(20, 5000, [75, 1500], "400 mm"),
  "blank.radius": field(20, 200_000, [150, 30_000], "3060 mm"),
  "blank.focal-ratio": field(0.3, 100, [1.2, 16], "3.8"),
  "blank.sagitta": field(0.001, 1000, [0.25, 60], "6.5 mm"),
  "blank.sagitta-over": field(5, 5000, [40, 1500], "400 mm"),
  "plaster.film": field(0, 5, [0.01, 0.5], "0.1 mm"),
  "blank.thickness": field(1, 1000, [8, 150], "45 mm"),
  "blank.bevel": field(0, 100, [0.2, 12], "2 mm"),
  "blank.readings.instrument.ring": field(5, 1000, [20, 400], "125 mm"),
  "blank.readings.instrument.ball": field(0.1, 50, [1.5, 13], "6.35 mm"),
  "blank.readings.instrument.wall": field(0.1, 100, [0.5, 12], "3 mm"),
  "blank.readings.instrument.resolution": field(0.00001, 1, [0.0002, 0.02], "0.001 mm"),
  "blank.readings.instrument.zero-error": field(0, 1, [0.0002, 0.02], "0.002 mm"),
  "blank.readings.instrument.size-error": field(0, 10, [0.001, 0.5], "0.05 mm"),
  "blank.readings.zones.at": field(0, 5000, [0.5, 1500], "60 mm"),
  "blank.readings.zones.reading": field(-1000, 1000, [0.02, 20], "0.64 mm"),
  "tool.diameter": field(5, 5000, [50, 1000], "300 mm"),
  "tool.rim": field(0, 1000, [0.5, 15], "3 mm"),
  "pieces.across": field(0.5, 1000, [5, 80], "20 mm"),
  "pieces.thickness": field(0.2, 500, [2, 30], "6 mm"),
  "pieces.bore": field(0.1, 1000, [1, 45], "10 mm"),
  "pieces.density": field(0.05, 25, [1.2, 9], "2.35"),
  "layout.gap": field(0, 500, [0.5, 15], "4 mm"),
  "layout.hand": field(0, 100, [0.1, 3], "0.5 mm"),
  "layout.keep-clear.diameter": field(0.1, 5000, [5, 300], "30 mm"),
  "grooves.cutter": field(0.1, 200, [0.8, 10], "3 mm"),
  "grooves.depth": field(0.05, 200, [0.5, 10], "2.5 mm"),
  "grooves.feed": field(1, 20_000, [50, 3000], "400 mm"),
  "grooves.clearance": field(0, 100, [0.1, 3], "0.5 mm"),
  "plaster.water": field(0.18, 1.5, [0.186, 1], "0.30"),
  "plaster.density": field(0.5, 10, [2, 3.2], "2.64"),
  "plaster.fill": field(0.5, 2000, [8, 120], "32 mm"),
  "plaster.cover": field(0, 1000, [4, 60], "20 mm"),
  "dam.sheet": field(0.05, 100, [0.2, 6], "1 mm"),
  "dam.overlap": field(0, 2000, [8, 200], "40 mm"),
  "socket.diameter": field(1, 1000, [10, 80], "28 mm"),
  "socket.bore": field(0.5, 1000, [4, 70], "21 mm"),
  "socket.length": field(1, 2000, [12, 150], "48 mm"),
  "container.height": field(5, 5000, [60, 800], "240 mm"),
  "container.headroom": field(0, 5000, [3, 120], "30 mm"),
  "container.section": field(1, 5000, [5, 800], "120 mm"),
  "container.diameter": field(5, 5000, [60, 700], "230 mm"),
  "container.marks.height": field(0, 5000, [3, 800], "120 mm"),
  "container.marks.volume": field(0, 2_000_000, [50, 100_000], "2 L"),
  "setup.offset": field(0, 5000, [3, 700], "50 mm"),
  "setup.stroke": field(0, 5000, [3, 400], "20 mm"),
  "setup.grades.depth": field(0, 5, [0.005, 1.5], "0.3 mm"),
  "setup.rate.change": field(-100, 100, [0.005, 5], "0.05 mm"),
  "setup.rate.error": field(0, 10, [0.0002, 0.05], "0.003 mm"),
  "setup.weights": field(0, 1000, [0.01, 40], "4.5 kg"),
  "print.overlap": field(0, 200, [2, 40], "10 mm"),
  "print.measured": field(50, 200, [90, 110], "99.6 mm"),
} satisfies Record<string, FieldLimits>;

export type LimitedKey = keyof typeof LIMITS;

/** Focal ratios of mirrors, as far as they are usual (common practice). */
export const FOCAL_RATIO = { least: 1, most: 16 } as const;

/** Whether a value lies outside the bounds of what is usual. */
export function isUnusual(value: number, { least, most }: { least: number; most: number }): boolean {
  return value < least || value > most;
}

/** A tool's diameter as a share of the blank's where the job names none (common practice). */
export const USUAL_TOOL = 0.75;

/** Least plaster over the pieces where the job names none, mm (common practice). */
export const USUAL_COVER = 20;

/** Weights put on the tool where the job names none, kg (common practice). */
export const WEIGHTS: readonly number[] = [0, 4.5, 9];

/** Whether weights are those that a job gets that names none. */
export function areUsual(weights: readonly number[]): boolean {
  return weights.length === WEIGHTS.length && weights.every((weight, n) => weight === WEIGHTS[n]);
}

/**
 * How truly a spherometer reads where the job does not say: a dial's step and a good surface plate's error, mm, and its
 * own size's error as a share of it (common practice).
 */
export const SPHEROMETER = { resolution: 0.001, zero: 0.002, size: 0.002 } as const;
