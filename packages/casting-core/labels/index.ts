/*
 * The labels of the groove template, compiled to WebAssembly by the build (see DEVELOPERS.md). A caller opens it once,
 * writes the points of what is drawn into the arrays it exports, and asks for places.
 */
export { lineEnd, openStrips, points } from "../channels/strips";
export { clearOf } from "./arrow";
export { besideBore, offX, offY, turnToPiece } from "./bore";
export { cross, enters, lineToBox, overlap } from "./box";
export { openNumbers, placeNumbers } from "./numbers";
export { wide } from "./place";
export { drawStrokes } from "./strokes";
export { index, taken } from "./taken";
