import type { JobOwnPiece } from "../job/types.js";
import { NUTS } from "./nuts.js";
import { TILES } from "./tiles.js";
import { WASHERS } from "./washers.js";

/** One row of the catalogue of pieces that can be bought. Lengths mm, density kg/L. */
export interface CatalogueItem {
  /** The name a job uses. */
  item: string;
  /** What it is called on sheets. */
  name: string;
  /** Its size, as a shape of one's own would be written in a job. */
  piece: JobOwnPiece;
  /** Flat ring that a fresh piece bears on, where known. */
  bearing?: { inner: number; outer: number };
  /** Whether a fresh piece bears on a ring, its edges chamfered, of which no size is known. */
  chamfered?: true;
  /** Where the sizes come from; ends in `value from memory` where no copy was at hand. */
  source: string;
}

/** Everything in the catalogue, in the order it is listed. Measured sizes of real pieces come first: use a shape of your own. */
export const CATALOGUE: readonly CatalogueItem[] = [...NUTS, ...WASHERS, ...TILES];

const byName = new Map(CATALOGUE.map((row) => [row.item, row]));

/** The row called `item`, if there is one. */
export function catalogueItem(item: string): CatalogueItem | undefined {
  return byName.get(item);
}
