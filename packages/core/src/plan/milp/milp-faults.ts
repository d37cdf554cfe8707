import type { Milp } from "./milp.js";

/** What is wrong with a model as data, and where: `columns[3]`, `rows[7].terms[2]`. */
export interface MilpFault {
  readonly code:
    | "name-missing"
    | "name-twice"
    | "not-a-number"
    | "ends-crossed"
    | "ends-hold-no-whole-number"
    | "no-such-column"
    | "no-such-row"
    | "wrong-length"
    | "column-twice-in-row"
    | "money-not-exact";
  readonly path: string;
  readonly message: string;
}

/** Whole numbers above this are no longer told apart in double precision. */
const MOST_EXACT = Number.MAX_SAFE_INTEGER;

/** Every fault of a model: names, numbers, ends, terms; and costs that could add up past the whole numbers a double holds exactly. Empty = readable. */
export function milpFaults(milp: Milp): MilpFault[] {
  const faults: MilpFault[] = [];
  const say = (code: MilpFault["code"], path: string, message: string) => faults.push({ code, path, message });
  named("columns", milp.columns, say);
  named("rows", milp.rows, say);
  let mostCost = 0;
  milp.columns.forEach((column, at) => {
    const path = `columns[${at}]`;
    if (!Number.isFinite(column.cost))
      say("not-a-number", path, `cost of ${column.name}: wants a number, got ${column.cost}`);
    ends(column, path, say);
    if (column.isInteger && Math.ceil(column.lower) > Math.floor(column.upper) && column.lower <= column.upper)
      say("ends-hold-no-whole-number", path, `${column.name}: no whole number from ${column.lower} to ${column.upper}`);
    const most = Math.max(Math.abs(column.lower), Math.abs(column.upper));
    if (column.cost !== 0 && Number.isFinite(most)) mostCost += Math.abs(column.cost) * most;
  });
  if (mostCost > MOST_EXACT)
    say("money-not-exact", "columns", `costs could add up to ${mostCost}, past ${MOST_EXACT}: count in a coarser unit`);
  milp.rows.forEach((row, at) => {
    const path = `rows[${at}]`;
    ends(row, path, say);
    const seen = new Set<number>();
    row.terms.forEach(([column, coefficient], term) => {
      const where = `${path}.terms[${term}]`;
      if (milp.columns[column] === undefined)
        say("no-such-column", where, `row ${row.name}: there is no column ${column}`);
      if (!Number.isFinite(coefficient))
        say("not-a-number", where, `row ${row.name}: wants a number, got ${coefficient}`);
      if (seen.has(column))
        say("column-twice-in-row", where, `row ${row.name}: column ${column} stands twice; add the two up`);
      seen.add(column);
    });
  });
  return faults;
}

type Say = (code: MilpFault["code"], path: string, message: string) => void;

function named(kind: "columns" | "rows", all: readonly { readonly name: string }[], say: Say): void {
  const first = new Map<string, number>();
  all.forEach(({ name }, at) => {
    const earlier = first.get(name);
    if (name.trim() === "") say("name-missing", `${kind}[${at}]`, "wants a name");
    else if (earlier !== undefined)
      say("name-twice", `${kind}[${at}]`, `${name} is the name of ${kind}[${earlier}] too`);
    else first.set(name, at);
  });
}

function ends(
  of: { readonly name: string; readonly lower: number; readonly upper: number },
  path: string,
  say: Say,
): void {
  if (Number.isNaN(of.lower) || Number.isNaN(of.upper) || of.lower === Infinity || of.upper === -Infinity)
    say("not-a-number", path, `ends of ${of.name}: want numbers, got ${of.lower} to ${of.upper}`);
  else if (of.lower > of.upper) say("ends-crossed", path, `${of.name}: ${of.lower} to ${of.upper} holds nothing`);
}
