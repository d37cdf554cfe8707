/** Rows as aligned columns, two spaces between; numbers (by `right`) to the right. The last column wraps to the width given. */
export function columns(rows: readonly (readonly string[])[], width: number, right: readonly number[] = []): string {
  const widths: number[] = [];
  for (const row of rows) for (const [i, cell] of row.entries()) widths[i] = Math.max(widths[i] ?? 0, cell.length);
  const last = widths.length - 1;
  const indent = widths.slice(0, last).reduce((sum, each) => sum + each + 2, 0);
  const room = Math.max(24, width - indent);
  return rows
    .map((row) => {
      const head = row
        .slice(0, last)
        .map((cell, i) => (right.includes(i) ? cell.padStart(widths[i] ?? 0) : cell.padEnd(widths[i] ?? 0)));
      const tail = wrap(row[last] ?? "", room);
      return [...head, tail[0] ?? ""]
        .join("  ")
        .trimEnd()
        .concat(
          tail
            .slice(1)
            .map((line) => `\n${" ".repeat(indent)}${line}`)
            .join(""),
        );
    })
    .join("\n");
}

/** Text broken at spaces into lines no longer than the width; a longer word stands alone. */
export function wrap(text: string, width: number): string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(/\s+/)) {
    if (line !== "" && line.length + 1 + word.length > width) {
      lines.push(line);
      line = word;
    } else line = line === "" ? word : `${line} ${word}`;
  }
  lines.push(line);
  return lines;
}

export const jsonText = (value: unknown): string => JSON.stringify(value, null, 2);
