// The library's one entry: re-exports only, in the order of the flow.
export { blankOf, toolOf } from "./blank/blank.js";
export { capVolume, radiusFromSagitta, sagittaOf } from "./blank/sphere.js";
export type { Blank, Tool } from "./blank/types.js";
export { CastingError, type Fault, pathText } from "./errors.js";
export type { GrooveEdge, Grooves } from "./grooves/types.js";
export type { Job } from "./job/types.js";
export { type LayOutOptions, layOut } from "./layout/layout.js";
export type { Layout, PlacedPiece, Quality } from "./layout/types.js";
export type { Note } from "./notes.js";
export { CATALOGUE, type CatalogueItem, catalogueItem } from "./pieces/catalogue.js";
export { pieceKinds, pieceVolume } from "./pieces/kinds.js";
export type { PieceKind } from "./pieces/types.js";
export type { Plan } from "./plan/types.js";
export { PLASTERS, type Plaster, plasterNamed } from "./pour/gypsum.js";
export { planPour } from "./pour/pour.js";
export type { Batch, Pour } from "./pour/types.js";
export type { Setup } from "./setup/types.js";
export { VERSION } from "./version.js";
