import { MAX_FILE_BYTES, megabytes } from "./bounds.js";
import { decodeText } from "./decode-text.js";
import { type GridOutcome, refusedGrid } from "./outcome.js";
import { textGrid } from "./text-grid.js";
import { workbookGrid } from "./workbook-grid.js";

const startsWith = (bytes: Uint8Array, ...signs: number[]): boolean => signs.every((sign, i) => bytes[i] === sign);

/** Files people give by mistake, by how they begin. */
const OTHERS: readonly (readonly [signs: readonly number[], code: string, message: string])[] = [
  [
    [0xd0, 0xcf, 0x11, 0xe0],
    "old-or-locked-workbook",
    "this is an old XLS workbook or one locked with a password; open it in a spreadsheet program and save it as XLSX without a password, or as CSV",
  ],
  [[0x25, 0x50, 0x44, 0x46], "pdf", "this is a PDF, not a survey; save the table as CSV or XLSX"],
  [
    [0x89, 0x50, 0x4e, 0x47],
    "picture",
    "this is a picture; type the table, and keep the picture as a photo of the coach",
  ],
  [[0xff, 0xd8, 0xff], "picture", "this is a picture; type the table, and keep the picture as a photo of the coach"],
];

const baseName = (path: string): string => path.split(/[\\/]/).at(-1) ?? path;

/**
 * Reads a survey file into a grid of cells with their places: CSV and other text tables in any usual encoding, and XLSX. What the file is is told by its
 * bytes, not by its name. Never throws for what is in the file: a refusal says where, what is wanted and what to do next.
 */
export async function readGrid(bytes: Uint8Array, fileName: string): Promise<GridOutcome> {
  const name = baseName(fileName);
  if (bytes.length === 0)
    return refusedGrid(name, "empty-file", "the file is empty; check that it was saved, and copy it again");
  if (bytes.length > MAX_FILE_BYTES)
    return refusedGrid(
      name,
      "file-too-big",
      `wanted at most ${megabytes(MAX_FILE_BYTES)}, got ${megabytes(bytes.length)}; keep one coach to a file, and photos out of it`,
    );
  for (const [signs, code, message] of OTHERS) if (startsWith(bytes, ...signs)) return refusedGrid(name, code, message);
  if (startsWith(bytes, 0x50, 0x4b)) return workbookGrid(bytes, name);
  const decoded = decodeText(bytes);
  if (/^\s*\{\s*"format"\s*:\s*"fusebook\//.test(decoded.text.slice(0, 200)))
    return refusedGrid(name, "a-record", "this is a Fusebook record, not a survey; open it as the record");
  if (/^\s*<(?:!doctype|html|table|\?xml)/i.test(decoded.text.slice(0, 200)))
    return refusedGrid(
      name,
      "a-web-page",
      "this is a web page or XML, not a survey; open it in a spreadsheet program and save it as XLSX or CSV",
    );
  if (decoded.text.includes("\u0000"))
    return refusedGrid(name, "not-text", "this is neither a text table nor a workbook; save the survey as CSV or XLSX");
  return textGrid(
    decoded.text,
    name,
    decoded.encoding === "windows-1252"
      ? [
          {
            place: name,
            code: "encoding-guessed",
            message:
              "the file is not UTF-8 and was read as Windows-1252; check letters with accents and signs like Ω and ²",
          },
        ]
      : [],
  );
}

/** Reads cells pasted from a spreadsheet or typed as text. */
export const readPasted = (text: string): GridOutcome =>
  text.trim() === ""
    ? refusedGrid("pasted text", "empty-file", "nothing was pasted; copy the rows with their headings and paste again")
    : textGrid(text.replace(/^\uFEFF/, ""), "pasted text");
