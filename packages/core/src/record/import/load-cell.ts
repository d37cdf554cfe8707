/** One load as a loads cell names it. */
export interface NamedLoad {
  readonly name: string;
  /** A count written with the name. */
  readonly quantity: number | undefined;
}

const COUNTS: readonly RegExp[] = [
  /^(?<count>\d{1,3})\s*[x×]\s*(?=\p{L})/iu,
  /^\((?<count>\d{1,3})\)\s*/,
  /\s*[x×]\s*(?<count>\d{1,3})$/i,
  /\s*\((?:x|×|qty\.?:?)?\s*(?<count>\d{1,3})\s*(?:x|×|pcs?|ea)?\)$/i,
];

/** Parts a cell that tells of several loads: by `;`, ` + ` or a line break. */
export const splitLoads = (text: string): string[] =>
  text
    .split(/\s*;\s*|\s+\+\s+|\s*\n\s*/)
    .map((part) => part.trim())
    .filter((part) => part !== "");

/** A load's name without the count written with it: `4x puck lights`, `reading lamp (2)`. */
export function namedLoad(text: string): NamedLoad {
  for (const pattern of COUNTS) {
    const count = Number(pattern.exec(text)?.groups?.count ?? 0);
    const name = text.replace(pattern, " ").replace(/\s+/g, " ").trim();
    if (count > 0 && name !== "") return { name, quantity: count };
  }
  return { name: text.replace(/\s+/g, " ").trim(), quantity: undefined };
}

/** A loads cell that says there is none. */
export const isSpareText = (text: string): boolean =>
  /^\(?(?:spare|empty|unused|not used|no load|open|vacant|blank)\)?$/i.test(text.trim());
