import type { SurveyField } from "./fields.js";
import { type Cell, type Grid, NO_CELL } from "./grid.js";
import type { ColumnMapping } from "./propose.js";
import type { Told, UnreadCell } from "./report.js";
import { keyOf, placeOfRow, type RowPlace, sectionOf } from "./row-key.js";
import { isDitto } from "./words.js";

/** A cell of a row with the column it stands in; `text` is trimmed, ditto marks are resolved. */
export interface RowCell {
  readonly column: ColumnMapping;
  readonly cell: Cell;
  readonly text: string;
}

/** One circuit's row. */
export interface SurveyRow {
  readonly key: string;
  readonly place: Exclude<RowPlace, { kind: "none" }>;
  /** Where it stands, for messages. */
  readonly where: string;
  readonly cells: ReadonlyMap<SurveyField, RowCell>;
  /** Cells of the columns that may share a field: notes, and what means nothing to us. */
  readonly shared: readonly RowCell[];
}

export interface SurveyRows {
  readonly rows: readonly SurveyRow[];
  /** Words beside a module's name on a line of its own. */
  readonly sections: readonly { readonly owner: string; readonly rest: string }[];
  readonly strays: readonly UnreadCell[];
  readonly told: readonly Told[];
}

/** `line 12, column 3` and `B12` as the row alone. */
const rowOfPlace = (place: string): string => {
  const line = /^line \d+/.exec(place)?.[0];
  return line ?? place.replace(/^.*?[A-Z]+(\d+)$/, "row $1");
};

const stray = (cells: readonly RowCell[], where: string, code: string, why: string): UnreadCell[] =>
  cells.map(({ column, cell, text }) => ({ row: where, column: column.heading, place: cell.place, text, code, why }));

/** Turns a grid into rows keyed by circuit. Rows without a key, and second rows with the same key, are strays: kept as text. */
export function surveyRowsOf(grid: Grid, mapping: readonly ColumnMapping[]): SurveyRows {
  const rows: SurveyRow[] = [];
  const sections: { owner: string; rest: string }[] = [];
  const strays: UnreadCell[] = [];
  const told: Told[] = [];
  const placeOfKey = new Map<string, string>();
  let owner: string | undefined;
  let above: readonly string[] = [];
  for (const line of grid.rows) {
    const texts: string[] = [];
    const filled: RowCell[] = [];
    for (const column of mapping) {
      const cell = line[column.index] ?? NO_CELL;
      let text = cell.text.trim();
      if (cell.unread !== undefined && text === "") text = cell.formula ?? "";
      const aboveText = above[column.index] ?? "";
      if (text !== "" && isDitto(text) && aboveText !== "") {
        told.push({ place: cell.place, code: "ditto", message: `"${text}" taken as "${aboveText}", the cell above` });
        text = aboveText;
      }
      texts[column.index] = text;
      if (text !== "") filled.push({ column, cell, text });
    }
    const first = filled[0];
    if (first === undefined) continue;
    const where = rowOfPlace(first.cell.place);
    const section = filled.length === 1 ? sectionOf(first.text) : undefined;
    if (section !== undefined) {
      owner = section.owner;
      sections.push(section);
      above = [];
      continue;
    }
    above = texts;
    const cells = new Map<SurveyField, RowCell>();
    const shared: RowCell[] = [];
    for (const item of filled) {
      const field = item.column.field;
      if (field === "notes" || field === "unread" || cells.has(field)) shared.push(item);
      else cells.set(field, item);
    }
    const textOf = (field: SurveyField) => cells.get(field)?.text ?? "";
    const moduleText = textOf("module");
    const place = placeOfRow({ circuit: textOf("circuit"), module: moduleText, channel: textOf("channel") }, owner);
    if (place.kind === "none") {
      strays.push(...stray(filled, where, "no-key", place.why));
      told.push({ place: where, code: "row-without-key", message: `${place.why}; the row is kept as text` });
      continue;
    }
    if (moduleText !== "") owner = moduleText;
    else if (place.kind === "channel" && owner === place.moduleText)
      told.push({
        place: where,
        code: "module-carried-down",
        message: `no module in the row: taken as "${owner}", from above`,
      });
    const key = keyOf(place);
    const before = placeOfKey.get(key);
    if (before !== undefined) {
      const hint = /^\d+\.\d$/.test(textOf("circuit")) ? " (a spreadsheet turns 3.10 into 3.1: write 3-10)" : "";
      const why = `circuit ${key} stands in ${before} already, which counts`;
      strays.push(...stray(filled, where, "duplicate-row", why));
      told.push({
        place: where,
        code: "duplicate-row",
        message: `${why}: give this row its own channel${hint}; it is kept as text`,
      });
      continue;
    }
    placeOfKey.set(key, where);
    rows.push({ key, place, where, cells, shared });
  }
  return { rows, sections, strays, told };
}
