// The library's one entry: re-exports only, by the files they come from.
export { tellsDirections } from "./blank/astigmatism.js";
export { blankOf, toolOf } from "./blank/blank.js";
export { GLASSES, type Glass, glassOf } from "./blank/glass.js";
export { capVolume, radiusFromSagitta, sagittaOf } from "./blank/sphere.js";
export type { Blank, Tool } from "./blank/types.js";
export { radiusWriter, stillToGo, uncertaintyText } from "./blank/words.js";
export { CHECK, checkSquares, MARGIN, PRINT_WORDS } from "./drawing/block.js";
export { piecesCsv } from "./drawing/csv.js";
export { groovesDxf } from "./drawing/dxf.js";
export { grown, overlap, type Rect } from "./drawing/ink.js";
export { candidatesHtml } from "./drawing/job-sheet/candidates.js";
export { jobSheetHtml } from "./drawing/job-sheet/page.js";
export { pageMarks } from "./drawing/joins.js";
export { broken, fitted, textWidth, wrapped } from "./drawing/letters.js";
export { columnName, type Drawn, type Page, type Tiling, tile } from "./drawing/pages.js";
export { FOOTER, type PrintPaper, paperOf } from "./drawing/paper.js";
export { retainerDxf } from "./drawing/retainer-dxf.js";
export { type Arc, arcTurn, type Shape, type Sheet, type Step, type Style } from "./drawing/sheet.js";
export { SHEETS } from "./drawing/sheets.js";
export { CastingError, type Fault, pathText } from "./errors.js";
export { GRAINS, type Grain, grainNamed } from "./grains.js";
export { grooveNotes } from "./grooves/notes.js";
export { outletsOf, outletsText } from "./grooves/outlets.js";
export { planGrooves } from "./grooves/plan.js";
export type { GrooveEdge, Grooves } from "./grooves/types.js";
export { type JobKey, jobJsonSchema, jobKeys, jobTable } from "./job/describe.js";
export { LIMITS } from "./job/limits.js";
export { jobNotes } from "./job/notes.js";
export { placeInJob, type ReadOptions } from "./job/read.js";
export { offsetOf, runOf } from "./job/run.js";
export { changeJob, scaleJob, scaleNotes } from "./job/scale.js";
export { spanOf } from "./job/spherometer.js";
export { starterJob } from "./job/starter.js";
export type { Job, Units } from "./job/types.js";
export { latin } from "./latin.js";
export { type LayOutOptions, layOut } from "./layout/layout.js";
export { layoutNotes } from "./layout/notes/notes.js";
export { type Seat, seatOf } from "./layout/notes/seat.js";
export { hardCoverage } from "./layout/quality/hard-coverage.js";
export { loadPressure, type Pressure } from "./layout/quality/pressure.js";
export { type Wear, wearOf } from "./layout/quality/wear.js";
export type { Layout, PlacedPiece, Quality } from "./layout/types.js";
export { nearest } from "./nearest.js";
export type { Note } from "./notes.js";
export { PAPERS, type Paper, paperNamed } from "./papers.js";
export { CATALOGUE, type CatalogueItem, catalogueItem } from "./pieces/catalogue.js";
export { pieceKinds, pieceVolume } from "./pieces/kinds.js";
export type { PieceKind } from "./pieces/types.js";
export { checkPlan, type Finding, type PlanCheck } from "./plan/check.js";
export { type Comparison, comparePlans } from "./plan/compare.js";
export { readJob } from "./plan/grounds.js";
export { planJson } from "./plan/json.js";
export { type MakeOptions, makePart, makePlan, type Part, type PartialPlan } from "./plan/make.js";
export { readPlan } from "./plan/read.js";
export { planJsonSchema } from "./plan/schema.js";
export type { Plan } from "./plan/types.js";
export { containerFromText } from "./pour/container-text.js";
export { damPieces } from "./pour/dam.js";
export { PLASTERS, type Plaster, plasterNamed } from "./pour/gypsum.js";
export { pourNotes } from "./pour/notes.js";
export { planPour } from "./pour/pour.js";
export type { Batch, Pour } from "./pour/types.js";
export { type MixAnswer, type MixOptions, mixFromOptions } from "./pour/without-job.js";
export { isFast, isHeavy } from "./setup/first-pass.js";
export { setupNotes } from "./setup/notes.js";
export { isHard, isSame } from "./setup/pass.js";
export { planSetup, setupFault } from "./setup/plan.js";
export { thicknessTaken } from "./setup/retainer.js";
export type { Setup } from "./setup/types.js";
export { bendText, edgeText, keptUp, passText, rateText, renewalText, runEdgeText } from "./setup/words.js";
export { atLeast, atMost } from "./units/bound-text.js";
export {
  apartText,
  axisText,
  closeLength,
  closeLengths,
  countText,
  depthText,
  fineLength,
  fixed,
  followsText,
  massText,
  meanText,
  minutesText,
  pressureText,
  roughLength,
  rpmText,
  shareText,
  speedText,
  temperatureText,
  timesText,
  volumeText,
} from "./units/figure-text.js";
export { lengthText, lengthTexts } from "./units/length-text.js";
export { parseLength, parseMass, parseNumber, parseShare, parseVolume } from "./units/parse.js";
export { VERSION } from "./version.js";
