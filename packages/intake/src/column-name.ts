/** The letter name of a column counted from 0, as spreadsheets have it: A, Z, AA. */
export const columnName = (index: number): string => {
  let name = "";
  for (let rest = index + 1; rest > 0; rest = Math.floor((rest - 1) / 26))
    name = String.fromCharCode(65 + ((rest - 1) % 26)) + name;
  return name;
};

/** The column counted from 0 and the row counted from 1 of a cell name like `B7`; undefined where it is none. */
export function cellOf(name: string): { readonly column: number; readonly row: number } | undefined {
  const match = /^\$?([A-Z]{1,3})\$?(\d+)$/.exec(name);
  if (match === null) return undefined;
  const column = [...(match[1] as string)].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;
  return { column, row: Number(match[2]) };
}
