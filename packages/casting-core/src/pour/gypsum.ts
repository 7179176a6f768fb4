import { known } from "../nearest.js";

/** One plaster of the table. Ratios g per g, densities kg/L, expansion in percent, strength MPa, times minutes. */
export interface Plaster {
  kind: string;
  name: string;
  /** g water per g powder: what the table stands for, and the range that handbooks give. */
  water: number;
  range: { least: number; most: number };
  /** Crystals of the powder: α (dense, needs little water) or β. They give different heat. */
  form: "alpha" | "beta";
  /** Linear setting expansion, percent. */
  expansion: { least: number; most: number };
  /** Least compressive strength 1 h after mixing, MPa; for gypsum cements and pottery plaster typical, dry. */
  strength: number;
  /** Minutes from powder in water until it has set. */
  setting: { least: number; most: number };
  source: string;
}

/** Type 1 sets in 2.5 to 5 min (ANSI/ADA 25); the others have no fixed time: 12 ± 4 min (value from memory). */
const TYPE_1_SETTING = { least: 2.5, most: 5 };
const STONE_SETTING = { least: 8, most: 16 };
/** Machine-mixed Vicat set of pottery plaster (maker's data sheet). */
const POTTERY_SETTING = { least: 14, most: 24 };
/** Gypsum cements (common practice; value from memory). */
const CEMENT_SETTING = { least: 15, most: 30 };

const ISO = "ISO 6873:2013, table 1";
const HANDBOOK = "water ratio of dental handbooks; value from memory";
const MAKER = "typical maker's data sheet for this consistency";

function dental(
  kind: string,
  name: string,
  water: number,
  range: [number, number],
  expansion: [number, number],
  strength: number,
): Plaster {
  return {
    kind,
    name,
    water,
    range: { least: range[0], most: range[1] },
    form: kind < "type-3" ? "beta" : "alpha",
    expansion: { least: expansion[0], most: expansion[1] },
    strength,
    setting: kind === "type-1" ? TYPE_1_SETTING : STONE_SETTING,
    source: `${ISO}, expansion; strength: value from memory; ${HANDBOOK}`,
  };
}

/** Expansion to reckon with where the maker prints none, %: the most of any type of ISO 6873. */
const UNPRINTED = 0.3;

/** A plaster sold by its use consistency: parts of water to 100 parts of powder. Strength psi as printed. */
function byConsistency(kind: string, name: string, consistency: number, expansion: number, psi: number): Plaster {
  const pottery = consistency >= 60;
  return {
    kind,
    name,
    water: consistency / 100,
    range: { least: consistency / 100, most: consistency / 100 },
    form: pottery ? "beta" : "alpha",
    expansion: { least: 0, most: expansion > 0 ? expansion : UNPRINTED },
    strength: (psi * 6.894757) / 1000,
    setting: pottery ? POTTERY_SETTING : CEMENT_SETTING,
    source:
      expansion > 0
        ? MAKER
        : `${MAKER}; its expansion is not printed: reckoned as up to ${UNPRINTED} %, the most of ISO 6873 type 5`,
  };
}

/** The table of plasters. Expansion limits are those of the 2013 edition: older texts draw the line of types 4 and 5 at 0.10 %. */
export const PLASTERS: readonly Plaster[] = [
  dental("type-1", "impression plaster, ISO 6873 type 1", 0.5, [0.45, 0.5], [0, 0.15], 4),
  dental("type-2", "model plaster, ISO 6873 type 2 class 2", 0.48, [0.45, 0.5], [0.06, 0.3], 9),
  dental("type-2-mounting", "mounting plaster, ISO 6873 type 2 class 1", 0.48, [0.45, 0.5], [0, 0.05], 9),
  dental("type-3", "model stone, ISO 6873 type 3", 0.3, [0.28, 0.3], [0, 0.2], 20),
  dental("type-4", "die stone of low expansion, ISO 6873 type 4", 0.23, [0.22, 0.24], [0, 0.15], 35),
  dental("type-5", "die stone of high expansion, ISO 6873 type 5", 0.2, [0.18, 0.22], [0.16, 0.3], 35),
  byConsistency("hobby-65", "hobby plaster, consistency 65", 65, 0, 2400),
  byConsistency("pottery-70", "pottery plaster, consistency 70", 70, 0.21, 2400),
  byConsistency("pottery-74", "soft pottery plaster, consistency 74", 74, 0.19, 1800),
  byConsistency("gypsum-cement-45", "white gypsum cement, consistency 45", 45, 0.39, 5000),
  byConsistency("gypsum-cement-40", "statuary gypsum cement, consistency 40", 40, 0.25, 6500),
  byConsistency("gypsum-cement-38", "gypsum cement of low expansion, consistency 38", 38, 0.08, 6000),
  byConsistency("gypsum-cement-32", "hard gypsum cement, consistency 32", 32, 0.24, 10000),
  byConsistency("gypsum-cement-22", "very hard gypsum cement, consistency 22", 22, 0, 13500),
];

/** The plaster called `kind`, in any case and with space around it, if the table has it. */
export function plasterNamed(kind: string): Plaster | undefined {
  return known(kind, PLASTERS, (plaster) => plaster.kind);
}
