import type { Dimension, Figure } from "../../quantity/index.js";
import type { LoadId } from "../schema/ids.js";
import type { Circuit, Load, Wish } from "../schema/types.js";
import { figureFrom } from "./circuit-cells.js";
import { withNote, withoutNote } from "./draft.js";
import type { SurveyField } from "./fields.js";
import { readFigureCell } from "./figure-cell.js";
import { isSpareText, type NamedLoad, namedLoad, splitLoads } from "./load-cell.js";
import { guessClass, readClass } from "./load-class.js";
import { placeNamed } from "./module-cells.js";
import { keepUnread, type Run, takeCell } from "./run.js";
import type { RowCell, SurveyRow } from "./survey-rows.js";
import { isNo, isYes, slug } from "./words.js";

/** The line in a load's notes that goes with a guessed class. */
export const GUESSED = "class guessed from the name";

/** What an owner's word in a dim column wishes; `isWhole`: the word says no more than that. */
export function readWish(text: string): { readonly wish: Wish; readonly isWhole: boolean } | undefined {
  const plain = text.trim().replace(/[.!]+$/, "");
  const whole = (wish: Wish, pattern: RegExp) => ({ wish, isWhole: pattern.test(plain) });
  if (/\b(?:steady|never|must not|must stay|do not|don'?t|keep on|always on)\b/i.test(plain))
    return whole("must-stay-steady", /^(?:must[ -]stay[ -]steady|steady|never|must not|keep steady)$/i);
  if (/\b(?:nice|maybe|if (?:cheap|easy|possible)|prefer|optional|would like|perhaps)\b/i.test(plain))
    return whole("nice-to-dim", /^(?:nice(?:[ -]to[ -](?:dim|have))?|maybe|optional)$/i);
  if (isYes(plain) || /^(?:y|yes|must|must[ -]dim|dim|need(?:ed|s)?|want(?:ed|s)?|required)\b/i.test(plain))
    return {
      wish: "must-dim",
      isWhole: isYes(plain) || /^(?:must(?:[ -]dim)?|dim|needed|wanted|required)$/i.test(plain),
    };
  if (isNo(plain)) return whole("none", /^(?:n|no|nope|not|false|0|no wish)$/i);
  return undefined;
}

interface FigureField {
  readonly field: SurveyField & keyof Load;
  readonly dimension: Dimension;
  /** One figure holds for every load of the row. */
  readonly isForAll: boolean;
  /** May be given for all pieces together. */
  readonly mayBeTotal: boolean;
}

const FIGURES: readonly FigureField[] = [
  { field: "currentA", dimension: "current", isForAll: false, mayBeTotal: true },
  { field: "powerW", dimension: "power", isForAll: false, mayBeTotal: true },
  { field: "stallA", dimension: "current", isForAll: false, mayBeTotal: true },
  { field: "ratedV", dimension: "voltage", isForAll: true, mayBeTotal: false },
  { field: "minV", dimension: "voltage", isForAll: true, mayBeTotal: false },
  { field: "maxFuseA", dimension: "current", isForAll: true, mayBeTotal: false },
];

/** A cell parted among the loads of its row; kept as unread where the parts do not fit the loads. */
const partedCell = (
  run: Run,
  row: SurveyRow,
  field: SurveyField,
  count: number,
): (RowCell | undefined)[] | undefined => {
  const item = takeCell(run, row, row.cells.get(field));
  if (item === undefined) return undefined;
  if (count === 0) {
    keepUnread(run, row, item, "no-load", "the row names no load that it could belong to");
    return undefined;
  }
  if (count === 1) return [item];
  const parts = splitLoads(item.text);
  if (parts.length === count) return parts.map((text) => ({ ...item, text }));
  keepUnread(
    run,
    row,
    item,
    "which-load",
    `the row names ${count} loads: part the cell by ; in the same order, or give each load its row`,
  );
  return undefined;
};

/** One cell for every load of its row. */
const sharedCell = (run: Run, row: SurveyRow, field: SurveyField, count: number): RowCell | undefined => {
  const item = takeCell(run, row, row.cells.get(field));
  if (item !== undefined && count === 0)
    keepUnread(run, row, item, "no-load", "the row names no load that it could belong to");
  return count === 0 ? undefined : item;
};

const newLoadId = (run: Run, name: string, key: string): LoadId => {
  const base = `l-${slug(name) || "load"}`;
  const isShared = (run.nameUses.get(slug(name)) ?? 0) > 1 || run.draft.loads.has(base);
  let id = isShared ? `${base}-${slug(key)}` : base;
  for (let n = 2; run.draft.loads.has(id); n += 1) id = `${base}-${slug(key)}-${n}`;
  return id as LoadId;
};

/** The loads a row names, matched to those the circuit has: by name, else one for one. */
const matched = (run: Run, row: SurveyRow, circuit: Circuit, named: readonly NamedLoad[]): Load[] => {
  const free = (circuit.loads ?? []).flatMap((id) => run.draft.loads.get(id) ?? []);
  const hadOne = free.length === 1 && named.length === 1;
  return named.map(({ name }) => {
    const at = free.findIndex((load) => slug(load.name) === slug(name) || load.id === `l-${slug(name)}`);
    const found = at >= 0 ? free.splice(at, 1)[0] : hadOne ? free.shift() : undefined;
    if (found !== undefined) return found;
    const made: Load = { id: newLoadId(run, name, row.key), name };
    run.draft.loads.set(made.id, made);
    return made;
  });
};

const withClass = (run: Run, row: SurveyRow, load: Load, stated: RowCell | undefined): Load => {
  const place = stated?.cell.place ?? row.where;
  if (stated !== undefined) {
    const read = readClass(stated.text.replace(/\?+$/, ""));
    if (read !== undefined) {
      const { classBasis: _, notes: __, ...rest } = load;
      const notes = withoutNote(load.notes, GUESSED);
      const doubt = stated.text.trim().endsWith("?") ? { classBasis: "assumed" as const } : {};
      return { ...rest, class: read, ...doubt, ...(notes === undefined ? {} : { notes }) } as Load;
    }
  }
  const noted =
    stated === undefined ? load : { ...load, notes: withNote(load.notes, `${stated.column.heading}: ${stated.text}`) };
  const mayGuess =
    load.class === undefined || (load.classBasis === "assumed" && `\n${load.notes ?? ""}\n`.includes(`\n${GUESSED}\n`));
  if (!mayGuess) return noted;
  const fromStated = stated === undefined ? { kind: "none" as const } : guessClass(stated.text);
  const guess = fromStated.kind === "guess" ? fromStated : guessClass(load.name);
  if (guess.kind === "mixed")
    run.told.push({
      place,
      code: "class-mixed",
      message: `"${load.name}" tells of two kinds (${guess.because}): state the class, or part the loads`,
    });
  if (guess.kind !== "guess") return noted;
  run.proposed.push({ load: load.id, name: load.name, class: guess.class, because: guess.because, place });
  return { ...noted, class: guess.class, classBasis: "assumed", notes: withNote(noted.notes, GUESSED) };
};

const quantityOf = (run: Run, row: SurveyRow, named: NamedLoad, item: RowCell | undefined): number | undefined => {
  if (item === undefined) return named.quantity;
  const digits = /^[x×]?\s*(\d{1,3})(?:\.0)?\s*(?:x|×|pcs?\.?|pieces|ea\.?)?$/i.exec(item.text)?.[1];
  if (digits !== undefined && Number(digits) > 0) return Number(digits);
  keepUnread(run, row, item, "quantity", "a quantity is a whole number from 1 up");
  return named.quantity;
};

const figureField = (run: Run, row: SurveyRow, load: Load, item: RowCell, kind: FigureField): Figure | undefined => {
  const count = load.quantity ?? 1;
  const old = load[kind.field] as Figure | undefined;
  if (!kind.mayBeTotal || count === 1) return figureFrom(run, row, item, kind.dimension, old);
  const read = readFigureCell(item.text, kind.dimension, item.column, run.reading);
  if (read.kind === "figure" && read.share === "total")
    return figureFrom(run, row, item, kind.dimension, old, { by: count, note: `"${item.text}" for all ${count}` });
  if (read.kind === "figure" && read.share === undefined)
    run.told.push({
      place: item.cell.place,
      code: "one-piece-taken",
      message: `"${item.text}" taken for one of ${count} pieces; write total in the cell or the heading if it is for all`,
    });
  return figureFrom(run, row, item, kind.dimension, old);
};

/** Lays the cells that tell of loads over the loads of a row's circuit, and returns the circuit with its loads. */
export function applyLoadCells(run: Run, row: SurveyRow, circuit: Circuit): Circuit {
  const cell = takeCell(run, row, row.cells.get("loads"));
  const label = run.hasLoadsColumn ? undefined : row.cells.get("label");
  const source =
    cell ??
    (label !== undefined && /\p{L}/u.test(label.text) && !/^(?:none|no label|blank|unlabell?ed)$/i.test(label.text)
      ? label
      : undefined);
  const isSpare = source !== undefined && isSpareText(source.text);
  const named = source === undefined || isSpare ? [] : splitLoads(source.text).map(namedLoad);
  if (cell !== undefined && !isSpare && named.length === 0)
    keepUnread(run, row, cell, "no-name", "no name is left in it");
  if (source !== undefined && source === label && named.length > 0)
    run.told.push({
      place: label.cell.place,
      code: "name-from-label",
      message: `no loads column: "${label.text}" is what the label says, taken as the load's name`,
    });
  const loads = matched(run, row, circuit, named);
  const parts = (field: SurveyField) => partedCell(run, row, field, loads.length);
  const quantities = parts("quantity");
  const classes = parts("class");
  const figures = FIGURES.map((kind) => ({
    kind,
    cells: kind.isForAll ? undefined : parts(kind.field),
    cell: kind.isForAll ? sharedCell(run, row, kind.field, loads.length) : undefined,
  }));
  const place = sharedCell(run, row, "place", loads.length);
  const wish = sharedCell(run, row, "wish", loads.length);
  const read = wish === undefined ? undefined : readWish(wish.text);
  if (wish !== undefined && read === undefined) keepUnread(run, row, wish, "wish", "write yes, nice, steady or no");
  if (place !== undefined && slug(place.text) === "") keepUnread(run, row, place, "place", "no name is left in it");
  loads.forEach((found, i) => {
    const name = named[i]!;
    let load: Load = { ...found, name: name.name };
    const quantity = quantityOf(run, row, name, quantities?.[i]);
    if (quantity !== undefined) load = { ...load, quantity };
    load = withClass(run, row, load, classes?.[i]);
    for (const { kind, cells, cell } of figures) {
      const item = cells?.[i] ?? cell;
      const figure = item === undefined ? undefined : figureField(run, row, load, item, kind);
      if (figure !== undefined) load = { ...load, [kind.field]: figure };
    }
    if (place !== undefined && slug(place.text) !== "") load = { ...load, place: placeNamed(run, place.text) };
    if (read !== undefined && wish !== undefined) {
      load = { ...load, wish: read.wish };
      if (!read.isWhole) load = { ...load, notes: withNote(load.notes, `${wish.column.heading}: ${wish.text}`) };
    }
    run.draft.loads.set(load.id, load);
  });
  return withLoads(run, row, circuit, loads, isSpare);
}

const withLoads = (run: Run, row: SurveyRow, circuit: Circuit, loads: readonly Load[], isSpare: boolean): Circuit => {
  const had = circuit.loads ?? [];
  const kept = had.filter((id) => !loads.some((load) => load.id === id));
  for (const id of loads.length > 0 || isSpare ? kept : [])
    run.told.push({
      place: row.where,
      code: "load-kept",
      message: `load ${id} is on circuit ${circuit.id} in the record and not in the row: it is kept; remove it by hand if it is gone`,
    });
  const ids = [...had, ...loads.map((load) => load.id).filter((id) => !had.includes(id))];
  const { isSpare: wasSpare, loads: _, ...rest } = circuit;
  const spare = isSpare ? true : loads.length > 0 ? undefined : wasSpare;
  return {
    ...rest,
    ...(spare === undefined ? {} : { isSpare: spare }),
    ...(ids.length > 0 || circuit.loads !== undefined ? { loads: ids } : {}),
  } as Circuit;
};
