import { CastingError } from "./errors.js";
import type { Units } from "./job/types.js";
import { known } from "./nearest.js";
import { atLeast, atMost } from "./units/bound-text.js";
import { parseLength } from "./units/parse.js";

/** A paper by name, upright, mm. */
export interface Paper {
  name: string;
  width: number;
  height: number;
  source: string;
}

const ISO = "ISO 216:2007";
const ANSI = "ANSI/ASME Y14.1";
const US = "US office paper, 8 1/2 x 14 in; common practice";

/** Papers that sheets are tiled for. */
export const PAPERS: readonly Paper[] = [
  { name: "A4", width: 210, height: 297, source: ISO },
  { name: "A3", width: 297, height: 420, source: ISO },
  { name: "A2", width: 420, height: 594, source: ISO },
  { name: "A1", width: 594, height: 841, source: ISO },
  { name: "A0", width: 841, height: 1189, source: ISO },
  { name: "Letter", width: 215.9, height: 279.4, source: ANSI },
  { name: "Legal", width: 215.9, height: 355.6, source: US },
  { name: "Tabloid", width: 279.4, height: 431.8, source: ANSI },
  { name: "Ledger", width: 279.4, height: 431.8, source: ANSI },
];

/** The paper called `name`, in any case and with space around it, if there is one. */
export function paperNamed(name: string): Paper | undefined {
  return known(name, PAPERS, (paper) => paper.name);
}

const SIZE = /^([\d./ -]{1,24})([a-z"]{0,6}) ?x([\d./ -]{1,24})([a-z"]{0,6})$/i;

/** Smallest page: the check squares of 4 in between margins of 10 mm, and the words below them; and the largest, mm. */
export const PAGE = { short: 122, long: 148, most: 5000 };

/**
 * Short and long side, mm, of a paper written as WIDTHxHEIGHT, such as `210x297`, `8.5x11in`, `8 1/2 x 11 in`: the last
 * unit goes for both. Nothing for another text; throws `invalid` where a side is no length, or none of a page.
 */
export function paperSize(text: string, units: Units): [short: number, long: number] | undefined {
  const [, width, own, height, unit = ""] = SIZE.exec(text) ?? [];
  if (width === undefined || height === undefined) return undefined;
  const sides = [width.trimEnd() + (own || unit), height + unit].map((side) => parseLength(side.toLowerCase(), units));
  const [short, long] = [Math.min(...sides), Math.max(...sides)];
  if (short < PAGE.short || long < PAGE.long) {
    throw refused(
      `paper of ${text} is too small for the check squares; it takes ${atLeast(PAGE.short, units)} x ${atLeast(PAGE.long, units)} or more, so check its unit`,
    );
  }
  if (long > PAGE.most)
    throw refused(
      `paper of ${text} is larger than the ${atMost(PAGE.most, units)} that a page may have; check its unit`,
    );
  return [short, long];
}

function refused(text: string): CastingError {
  return new CastingError("invalid", [{ path: [], text }]);
}
