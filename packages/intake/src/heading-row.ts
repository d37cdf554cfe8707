import type { GridCell } from "@fusebook/core/record";

const SAMPLE_ROWS = 40;

const isWords = (text: string): boolean =>
  /\p{L}/u.test(text) && !/^[~<>]?\s*[\d.,]+\s*(?:a|amps?|w|v|ft|m|ga|awg|mm2|mm²)?$/i.test(text.trim());
const filled = (row: readonly GridCell[]): readonly GridCell[] => row.filter((cell) => cell.text.trim() !== "");

/**
 * Which row holds the headings? The first row of at least two filled cells, all short words and none twice, that is about as wide as the table below it.
 * Undefined where the table has none: then its columns are told by what stands in them.
 */
export function headingRowOf(rows: readonly (readonly GridCell[])[]): number | undefined {
  const sample = rows.slice(0, SAMPLE_ROWS);
  const widths = sample.map((row) => filled(row).length);
  const usual = [...widths].sort((a, b) => a - b)[Math.floor(widths.length / 2)] ?? 0;
  for (const [i, row] of sample.entries()) {
    const cells = filled(row);
    if (cells.length < 2 || cells.length < usual * 0.6) continue;
    const words = cells.filter((cell) => isWords(cell.text) && cell.text.length <= 48);
    const distinct = new Set(cells.map((cell) => cell.text.trim().toLowerCase()));
    if (words.length >= cells.length * 0.75 && distinct.size >= cells.length * 0.75)
      return looksLikeData(cells) ? undefined : i;
    return undefined;
  }
  return undefined;
}

/** A row with a figure and its unit, or a key like 3-07, is a row of the table itself. */
const looksLikeData = (cells: readonly GridCell[]): boolean =>
  cells.some((cell) =>
    /^(?:m?\d{1,2}[-./:]\d{1,2}|\d+(?:[.,]\d+)?\s*(?:a|amps?|w|ft|ga|awg)|\d+)$/i.test(cell.text.trim()),
  );
