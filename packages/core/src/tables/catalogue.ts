import { Invariant, type Source } from "../quantity/index.js";
import { ALL, type TableId } from "./published/all.js";
import { type PublishedTable, sourceFor } from "./table.js";

const BY_ID: ReadonlyMap<string, PublishedTable> = new Map(ALL.map((table) => [table.id, table]));

/** Every published table the engines rest on, in reading order. */
export const allTables = (): readonly PublishedTable[] => ALL;

/** One table by its id, as sources name it; undefined where there is none. */
export const tableById = (id: string): PublishedTable | undefined => BY_ID.get(id);

/** The table of that id. Throws `Invariant` when it is not there: ids are written in our own code. */
export const theTable = (id: TableId): PublishedTable => {
  const table = BY_ID.get(id);
  if (table === undefined) throw new Invariant("table-id", `no table ${id}`);
  return table;
};

/** The source to name beside a figure of this table, with a clause of it where one is given. */
export const sourceOf = (id: TableId, clause?: string): Source => sourceFor(theTable(id), undefined, clause);
