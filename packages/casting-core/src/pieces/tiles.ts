import type { JobOwnPiece } from "../job/types.js";
import type { CatalogueItem } from "./catalogue.js";

/** Porcelain tile, water absorption up to 0.5 %, kg/L: 2.3 to 2.4 (tile literature; value from memory). */
const PORCELAIN = 2.35;
/** Soda-lime glass, kg/L (EN 572-1; value from memory). */
const GLASS = 2.5;
/** The face of a nominal 1 in tile is about 15/16 in, sold on sheets with a 1/16 in joint (trade practice; value from memory). */
const JOINT = 25.4 / 16;
/** Nominal thickness of mosaic tile, 1/4 in (ANSI A137.1). */
const QUARTER_INCH = 6.35;

const ANSI = "ANSI A137.1 nominal size less a 1/16 in joint, 1/4 in thick; list of sizes: value from memory";

function tile(item: string, name: string, piece: JobOwnPiece, source: string): CatalogueItem {
  return { item, name, piece, source };
}

const porcelain = { thickness: QUARTER_INCH, density: PORCELAIN };

/** Common mosaic tiles. Real tiles differ from their names by some percent: measure, and use a shape of your own. */
export const TILES: readonly CatalogueItem[] = [
  tile("mosaic-square-1in", "1 in square mosaic tile", { shape: "square", across: 25.4 - JOINT, ...porcelain }, ANSI),
  tile("mosaic-square-2in", "2 in square mosaic tile", { shape: "square", across: 50.8 - JOINT, ...porcelain }, ANSI),
  tile(
    "mosaic-rectangle-1x2in",
    "1 x 2 in mosaic tile",
    { shape: "rectangle", length: 50.8 - JOINT, width: 25.4 - JOINT, ...porcelain },
    ANSI,
  ),
  tile(
    "mosaic-hexagon-1in",
    "1 in hexagon mosaic tile",
    { shape: "hexagon", across: 25.4 - JOINT, ...porcelain },
    ANSI,
  ),
  tile(
    "mosaic-hexagon-2in",
    "2 in hexagon mosaic tile",
    { shape: "hexagon", across: 50.8 - JOINT, ...porcelain },
    ANSI,
  ),
  tile(
    "mosaic-round-19mm",
    "19 mm round mosaic tile",
    { shape: "round", diameter: 19, thickness: 6, density: PORCELAIN },
    "trade practice; value from memory",
  ),
  tile(
    "glass-square-20mm",
    "20 mm glass mosaic tile",
    { shape: "square", across: 20, thickness: 4, density: GLASS },
    "glass mosaic of 20 mm, 4 to 5 mm thick (encyclopedia, glass mosaic)",
  ),
  tile(
    "glass-square-25mm",
    "25 mm glass mosaic tile",
    { shape: "square", across: 25, thickness: 4, density: GLASS },
    "glass mosaic of 25 mm, 4 to 5 mm thick (encyclopedia, glass mosaic)",
  ),
];
