export { MAX_COLUMNS, MAX_FILE_BYTES, MAX_ROWS, MAX_UNPACKED_BYTES } from "./bounds.js";
export type { GridFault, GridOutcome } from "./outcome.js";
export { readGrid, readPasted } from "./read-grid.js";
