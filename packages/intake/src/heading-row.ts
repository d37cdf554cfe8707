import type { RawCell, RawRow } from "./raw-table.js";

const SAMPLE_ROWS = 40;

/** The rows of a table that hold its headings, from 0: one, or two where a merged row of groups stands above. */
export interface HeadingRows {
  readonly groups: number | undefined;
  readonly headings: number;
}

const isWords = (text: string): boolean =>
  /\p{L}|^#$/u.test(text) && !/^[~<>]?\s*[\d.,]+\s*(?:a|amps?|w|v|ft|m|ga|awg|mm2|mm²)?$/i.test(text.trim());
const filled = (row: RawRow | undefined): readonly RawCell[] =>
  (row?.cells ?? []).filter((cell) => cell.text.trim() !== "");

/** A row with a figure and its unit, or a key like 3-07, is a row of the table itself. */
const looksLikeData = (cells: readonly RawCell[]): boolean =>
  cells.some((cell) =>
    /^(?:m?\d{1,2}[-./:]\d{1,2}|f\s?-?\d{1,3}|\d+(?:[.,]\d+)?\s*(?:a|amps?|w|ft|'|ga|awg)|[\d.,]+)$/i.test(
      cell.text.trim(),
    ),
  );

const areHeadings = (cells: readonly RawCell[]): boolean => {
  const own = cells.filter((cell) => cell.fill === undefined);
  const words = cells.filter((cell) => isWords(cell.text) && cell.text.length <= 48);
  const distinct = new Set(own.map((cell) => cell.text.trim().toLowerCase()));
  return words.length >= cells.length * 0.75 && distinct.size >= own.length * 0.75 && !looksLikeData(cells);
};

/**
 * Which rows hold the headings? The first row of at least two filled cells, all short words and few twice, that is about as wide as the table below it;
 * and the row under it too, where merged cells make the first a row of groups. Undefined where the table has none.
 */
export function headingRowsOf(rows: readonly RawRow[]): HeadingRows | undefined {
  const sample = rows.slice(0, SAMPLE_ROWS);
  const widths = sample.map((row) => filled(row).length).sort((a, b) => a - b);
  const usual = widths[Math.floor(widths.length / 2)] ?? 0;
  for (const [i, row] of sample.entries()) {
    const cells = filled(row);
    const own = cells.filter((cell) => cell.fill === undefined);
    if (own.length < 2 && !(own.length === 1 && usual <= 1 && i === 0)) continue;
    if (cells.length < usual * 0.6) continue;
    if (!areHeadings(cells)) return undefined;
    const below = filled(sample[i + 1]);
    const isGrouped = cells.some((cell) => cell.fill === "right") || below.some((cell) => cell.fill === "down");
    if (isGrouped && below.length >= 2 && areHeadings(below)) return { groups: i, headings: i + 1 };
    return { groups: undefined, headings: i };
  }
  return undefined;
}
