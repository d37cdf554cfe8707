import type { PlaceId } from "../schema/ids.js";
import type { Draft } from "./draft.js";
import type { CellReading } from "./figure-cell.js";
import type { ProposedClass, Told, UnreadCell } from "./report.js";
import type { RowCell, SurveyRow } from "./survey-rows.js";
import { isBlankMark } from "./words.js";

/** One import under way: the draft, how bare figures are read, and what will be reported. */
export interface Run {
  readonly draft: Draft;
  readonly reading: CellReading;
  readonly areaBasis: "awg" | "sae";
  /** In how many rows a load name is used, by slug. */
  readonly nameUses: ReadonlyMap<string, number>;
  readonly hasLoadsColumn: boolean;
  readonly unread: UnreadCell[];
  readonly told: Told[];
  readonly proposed: ProposedClass[];
  /** Modules and places found or made so far, by what they are called. */
  readonly moduleByText: Map<string, string>;
  readonly placeByText: Map<string, PlaceId>;
  /** What a module's column has said already, by module and field: the first row counts. */
  readonly moduleFacts: Map<string, { readonly text: string; readonly where: string }>;
}

export const keepUnread = (run: Run, row: SurveyRow, item: RowCell, code: string, why: string): void => {
  run.unread.push({ row: row.key, column: item.column.heading, place: item.cell.place, text: item.text, code, why });
};

/**
 * The cell of a row for a field, where it says something. A cell that says "nothing" or "not known", or that could not be got out of the file,
 * is kept as unread here and now.
 */
export const takeCell = (run: Run, row: SurveyRow, item: RowCell | undefined): RowCell | undefined => {
  if (item === undefined) return undefined;
  if (item.cell.unread !== undefined) keepUnread(run, row, item, "formula", item.cell.unread);
  else if (isBlankMark(item.text)) keepUnread(run, row, item, "blank", "the cell says that there is nothing");
  else if (/^\?+$/.test(item.text)) keepUnread(run, row, item, "not-known", "not known yet: look, then write it here");
  else return item;
  return undefined;
};
