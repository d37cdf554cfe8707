import type { Typeface } from "./typeface.js";

/** The files a document is set from, by path in the engine's own file system ("/data.json"). */
export type PaperFiles = ReadonlyMap<string, Uint8Array | string>;

/** One set document, or why it could not be set. Warnings of the typesetter are faults here: nothing is let through quietly. */
export type Setting =
  | { readonly kind: "set"; readonly pdf: Uint8Array }
  | { readonly kind: "refused"; readonly faults: readonly string[] };

/** What sets pages. Everything that makes paper goes through this, so that the typesetter behind it can be changed. */
export interface PaperEngine {
  /** Sets the file `main` among `files` to a PDF. The same input gives the same bytes. */
  pdf(main: string, files: PaperFiles): Promise<Setting>;
  /** The typefaces the engine was given, in the order of `FONT_FILES`, for measuring text and for finding glyphs that are not there. */
  readonly typefaces: readonly Typeface[];
}
