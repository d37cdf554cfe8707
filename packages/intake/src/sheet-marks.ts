import { cellOf } from "./column-name.js";

/** What a sheet's XML says beside the values of its cells. */
export interface SheetMarks {
  /** Ranges of merged cells, rows from 1 and columns from 0, ends included. */
  readonly merged: readonly {
    readonly range: string;
    readonly top: number;
    readonly left: number;
    readonly bottom: number;
    readonly right: number;
  }[];
  /** Cells with a formula, by name, and whether a value is kept beside it. */
  readonly formulas: ReadonlyMap<string, { readonly formula: string; readonly hasValue: boolean }>;
}

const decode = (text: string): string =>
  text.replace(
    /&(lt|gt|amp|quot|apos);/g,
    (_, name: string) => ({ lt: "<", gt: ">", amp: "&", quot: '"', apos: "'" })[name] ?? "",
  );

/** Reads merged ranges and formulas out of a worksheet part. */
export function sheetMarks(xml: string): SheetMarks {
  const merged: SheetMarks["merged"][number][] = [];
  for (const match of xml.matchAll(/<mergeCell\b[^>]*\bref="([A-Z]+\d+):([A-Z]+\d+)"/g)) {
    const [from, to] = [cellOf(match[1] as string), cellOf(match[2] as string)];
    if (from && to)
      merged.push({
        range: `${match[1]}:${match[2]}`,
        top: from.row,
        left: from.column,
        bottom: to.row,
        right: to.column,
      });
  }
  const formulas = new Map<string, { formula: string; hasValue: boolean }>();
  for (const match of xml.matchAll(/<c\b[^>]*?\br="([A-Z]+\d+)"[^>]*?(?<!\/)>([\s\S]*?)<\/c>/g)) {
    const inside = match[2] as string;
    const formula = /<f\b[^>]*?(?:\/>|>([\s\S]*?)<\/f>)/.exec(inside);
    if (formula === null) continue;
    formulas.set(match[1] as string, {
      formula: `=${decode(formula[1] ?? "")}`,
      hasValue: /<v>[^<]+<\/v>|<is>/.test(inside),
    });
  }
  return { merged, formulas };
}

/** The sheets of a workbook in order, with the part each lives in. */
export function sheetParts(parts: ReadonlyMap<string, string>): { readonly name: string; readonly xml: string }[] {
  const book = parts.get("xl/workbook.xml") ?? "";
  const links = new Map<string, string>();
  for (const match of (parts.get("xl/_rels/workbook.xml.rels") ?? "").matchAll(/<Relationship\b[^>]*>/g)) {
    const id = /\bId="([^"]*)"/.exec(match[0])?.[1];
    const target = /\bTarget="([^"]*)"/.exec(match[0])?.[1];
    if (id !== undefined && target !== undefined)
      links.set(id, target.startsWith("/") ? target.slice(1) : `xl/${target}`);
  }
  return [...book.matchAll(/<sheet\b[^>]*>/g)].map((match) => {
    const name = decode(/\bname="([^"]*)"/.exec(match[0])?.[1] ?? "");
    const id = /\br:id="([^"]*)"/.exec(match[0])?.[1] ?? "";
    return { name, xml: parts.get(links.get(id) ?? "") ?? "" };
  });
}
