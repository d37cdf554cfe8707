export type { Block, Cell, Drawing, PaperDocument, PaperSize } from "./document/blocks.js";
export { setDocument } from "./document/set-document.js";
export { loadPaperEngine } from "./engine/load.js";
export type { PaperEngine, PaperFiles, Setting } from "./engine/paper-engine.js";
export { startTypst, type TypstParts } from "./engine/typst-engine.js";
