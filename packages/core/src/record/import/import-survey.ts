import { differenceOf } from "../difference.js";
import { newRecord } from "../new-record.js";
import { policyOf } from "../policy.js";
import type { CircuitId } from "../schema/ids.js";
import type { Circuit, CoachRecord } from "../schema/types.js";
import { applyCircuitCells } from "./circuit-cells.js";
import { draftOf } from "./draft.js";
import type { Grid } from "./grid.js";
import { isSpareText, namedLoad, splitLoads } from "./load-cell.js";
import { applyLoadCells } from "./load-cells.js";
import { applyModuleCells, applySection, moduleNamed } from "./module-cells.js";
import type { ColumnMapping } from "./propose.js";
import type { ImportReport, UnreadCell } from "./report.js";
import { circuitIdOf, isFuseBlock } from "./row-key.js";
import type { Run } from "./run.js";
import { type SurveyRow, type SurveyRows, surveyRowsOf } from "./survey-rows.js";
import { slug } from "./words.js";

export interface ImportOptions {
  /** Id and name of a record made from nothing; from the file's name where absent. */
  readonly id?: string;
  readonly name?: string;
  /** What a length without any unit is in; the policy's units where absent. */
  readonly bareLengthUnit?: "ft" | "m";
}

const withoutEnding = (fileName: string): string => fileName.replace(/\.[A-Za-z0-9]{1,5}$/, "");

const startFrom = (grid: Grid, options: ImportOptions): CoachRecord => {
  const name = options.name ?? (withoutEnding(grid.name).trim() || "coach");
  return newRecord({ id: options.id ?? (slug(name) || "coach"), name });
};

const nameUses = (rows: readonly SurveyRow[], hasLoadsColumn: boolean): Map<string, number> => {
  const uses = new Map<string, number>();
  for (const row of rows) {
    const text = row.cells.get(hasLoadsColumn ? "loads" : "label")?.text ?? "";
    const names = isSpareText(text) ? [] : splitLoads(text).map((part) => slug(namedLoad(part).name));
    for (const name of new Set(names)) uses.set(name, (uses.get(name) ?? 0) + 1);
  }
  return uses;
};

/** The circuit of a row, found by where it is fed from, else by id; made where the record has none. */
const circuitFor = (run: Run, row: SurveyRow, bySpot: ReadonlyMap<string, string>): Circuit => {
  const { place } = row;
  const id = circuitIdOf(place);
  if (place.kind === "channel") {
    const module = moduleNamed(run, place.moduleText);
    const found = run.draft.circuits.get(bySpot.get(`${module.id}/${place.channel}`) ?? "");
    if (found !== undefined) return found;
    const free = freeId(run, id);
    return { id: free as CircuitId, module: module.id, channel: place.channel, surveyRow: row.key };
  }
  const found = run.draft.circuits.get(bySpot.get(`fuse/${place.name}`) ?? "");
  if (found !== undefined) return found;
  const block = place.block;
  const node =
    block === undefined
      ? undefined
      : run.draft.base.nodes?.find((item) => item.id === block || slug(item.name) === slug(block));
  return {
    id: freeId(run, id) as CircuitId,
    fusePosition: { name: place.name, ...(node === undefined ? {} : { node: node.id }) },
    surveyRow: row.key,
  };
};

const freeId = (run: Run, id: string): string => {
  let free = id;
  for (let n = 2; run.draft.circuits.has(free); n += 1) free = `${id}-${n}`;
  return free;
};

const spotsOf = (record: CoachRecord): Map<string, string> => {
  const spots = new Map<string, string>();
  const add = (spot: string, id: string) => {
    if (!spots.has(spot)) spots.set(spot, id);
  };
  for (const circuit of record.circuits ?? []) {
    if (circuit.module !== undefined && circuit.channel !== undefined)
      add(`${circuit.module}/${circuit.channel}`, circuit.id);
    if (circuit.fusePosition !== undefined) add(`fuse/${circuit.fusePosition.name}`, circuit.id);
  }
  return spots;
};

/** The unread cells of a circuit's row set on the circuit: those of this survey's columns anew, those of other surveys as they were. */
const withUnread = (circuit: Circuit, cells: readonly UnreadCell[], headings: ReadonlySet<string>): Circuit => {
  if (cells.length === 0 && circuit.unread === undefined) return circuit;
  const unread = new Map(Object.entries(circuit.unread ?? {}).filter(([column]) => !headings.has(column)));
  for (const { column, text } of cells) {
    const before = unread.get(column);
    unread.set(column, before === undefined ? text : `${before} | ${text}`);
  }
  const { unread: _, ...rest } = circuit;
  return (unread.size === 0 ? rest : { ...rest, unread: Object.fromEntries(unread) }) as Circuit;
};

/** A list with its first things of each id as the draft has them, new ones at the end; second things with the same id stay as they are. */
const laidOver = <T extends { id: string }>(
  items: readonly T[] | undefined,
  draft: ReadonlyMap<string, T>,
): T[] | undefined => {
  const seen = new Set<string>();
  const list = (items ?? []).map((item) => {
    if (seen.has(item.id)) return item;
    seen.add(item.id);
    return draft.get(item.id) ?? item;
  });
  for (const [id, item] of draft) if (!seen.has(id)) list.push(item);
  return list.length > 0 || items !== undefined ? list : undefined;
};

/** The survey's memory: this mapping, and every cell that could not be read, those of the same rows replaced. */
const memoryOf = (
  base: CoachRecord,
  grid: Grid,
  mapping: readonly ColumnMapping[],
  run: Run,
  keys: ReadonlySet<string>,
): CoachRecord["survey"] => {
  const isSame = (headings: readonly string[]) =>
    headings.length === grid.headings.length && headings.every((heading, i) => heading === grid.headings[i]);
  const others = (base.survey?.mappings ?? []).filter((item) => !isSame(item.headings));
  const columns = Object.fromEntries(mapping.map((column) => [column.heading, column.field]));
  const found = (base.survey?.mappings ?? []).find((item) => isSame(item.headings));
  const mine = { ...found, name: found?.name ?? grid.name, headings: [...grid.headings], columns };
  const unread = run.unread.map(({ row, column, text, why }) => ({ row, column, text, why }));
  const signOf = (item: { row: string; column: string; text: string }) =>
    JSON.stringify([item.row, item.column, item.text]);
  const signs = new Set(unread.map(signOf));
  const kept = (base.survey?.unread ?? []).filter((item) => !keys.has(item.row) && !signs.has(signOf(item)));
  return {
    ...base.survey,
    mappings: grid.headingRow === undefined ? [...(base.survey?.mappings ?? [])] : [...others, mine],
    unread: [...kept, ...unread],
  };
};

const apply = (run: Run, survey: SurveyRows, headings: ReadonlySet<string>): void => {
  for (const { owner, rest } of survey.sections) if (!isFuseBlock(owner)) applySection(run, owner, rest);
  const bySpot = spotsOf(run.draft.base);
  for (const row of survey.rows) {
    const before = run.unread.length;
    applyModuleCells(run, row);
    const found = circuitFor(run, row, bySpot);
    const circuit = applyLoadCells(run, row, applyCircuitCells(run, row, { ...found, surveyRow: row.key }));
    run.draft.circuits.set(circuit.id, withUnread(circuit, run.unread.slice(before), headings));
  }
};

/**
 * Lays a survey over a record (or starts one): one row a circuit. Nothing is dropped: a cell ends in a field, in notes, or as unread text on its
 * circuit and in the report. The same survey imported again changes nothing; changed rows update; ids stay. Neither argument is changed.
 */
export function importSurvey(
  record: CoachRecord | undefined,
  grid: Grid,
  mapping: readonly ColumnMapping[],
  options: ImportOptions = {},
): { readonly record: CoachRecord; readonly report: ImportReport } {
  const base = record ?? startFrom(grid, options);
  const policy = policyOf(base);
  const survey = surveyRowsOf(grid, mapping);
  const hasLoadsColumn = mapping.some((column) => column.field === "loads");
  const run: Run = {
    draft: draftOf(base),
    reading: {
      decimalSign: grid.decimalSign,
      bareLengthUnit: options.bareLengthUnit ?? (policy.unitsShown === "metric" ? "m" : "ft"),
    },
    areaBasis: policy.areaBasis,
    nameUses: nameUses(survey.rows, hasLoadsColumn),
    hasLoadsColumn,
    unread: [],
    told: [...survey.told],
    proposed: [],
    moduleByText: new Map(),
    placeByText: new Map(),
    moduleFacts: new Map(),
  };
  apply(run, survey, new Set(mapping.map((column) => column.heading)));
  run.unread.push(...survey.strays);
  for (const cell of grid.above)
    if (cell.text.trim() !== "")
      run.unread.push({
        row: "above the headings",
        column: "",
        place: cell.place,
        text: cell.text.trim(),
        code: "title",
        why: "stands above the headings",
      });
  const keys = new Set(survey.rows.map((row) => row.key));
  const lists = {
    places: laidOver(base.places, run.draft.places),
    modules: laidOver(base.modules, run.draft.modules),
    circuits: laidOver(base.circuits, run.draft.circuits),
    loads: laidOver(base.loads, run.draft.loads),
  };
  const result = {
    ...base,
    ...Object.fromEntries(Object.entries(lists).filter(([, list]) => list !== undefined)),
    survey: memoryOf(base, grid, mapping, run, keys),
  } as CoachRecord;
  return {
    record: result,
    report: {
      rows: grid.rows.length,
      circuits: survey.rows.length,
      unread: run.unread,
      proposedClasses: run.proposed,
      told: run.told,
      changes: differenceOf(base, result),
    },
  };
}
