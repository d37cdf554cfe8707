/** Signs that part the columns of a text table, likeliest first. */
export const SEPARATORS = ["\t", ";", ",", "|"] as const;
export type Separator = (typeof SEPARATORS)[number];

const SAMPLE_LINES = 60;

/** The sign counted outside quotes. */
function countIn(line: string, sign: string): number {
  let count = 0;
  let isQuoted = false;
  for (const letter of line) {
    if (letter === '"') isQuoted = !isQuoted;
    else if (letter === sign && !isQuoted) count += 1;
  }
  return count;
}

/**
 * Which sign parts the columns? The one that most lines hold the same number of times, more columns winning among equals. A sign that is the decimal
 * comma stands in fewer lines, or an uneven number of times. A comma where no line has any: one column.
 */
export function separatorOf(text: string): Separator {
  const lines = text
    .slice(0, 200_000)
    .split(/\r\n|\n|\r/)
    .filter((line) => line.trim() !== "")
    .slice(0, SAMPLE_LINES);
  let best: Separator = ",";
  let bestScore = 0;
  for (const sign of SEPARATORS) {
    const counts = lines.map((line) => countIn(line, sign));
    const tally = new Map<number, number>();
    for (const count of counts) if (count > 0) tally.set(count, (tally.get(count) ?? 0) + 1);
    const [columns, agree] = [...tally].sort((a, b) => b[1] - a[1] || b[0] - a[0])[0] ?? [0, 0];
    const score = (agree / Math.max(1, lines.length)) * (1 + Math.log1p(columns));
    if (score > bestScore * 1.001) {
      best = sign;
      bestScore = score;
    }
  }
  return best;
}

/** The decimal sign of a table's cells: a comma where cells like `1,5` outnumber cells like `1.5`. */
export function decimalSignOf(cells: Iterable<string>): "." | "," {
  let commas = 0;
  let points = 0;
  for (const cell of cells) {
    if (/^\s*[~<>]?\s*\d+,\d{1,2}(?!\d)/.test(cell)) commas += 1;
    else if (/^\s*[~<>]?\s*\d*\.\d+/.test(cell)) points += 1;
  }
  return commas > points ? "," : ".";
}
