import type { ModuleId, PlaceId } from "../schema/ids.js";
import type { Module, ModuleKind } from "../schema/types.js";
import { withNote } from "./draft.js";
import type { SurveyField } from "./fields.js";
import { moduleIdOf, moduleToken } from "./row-key.js";
import { keepUnread, type Run, takeCell } from "./run.js";
import type { RowCell, SurveyRow } from "./survey-rows.js";
import { isBlankMark, slug } from "./words.js";

/** The module a text names, by id or by name; made where the record has none. */
export function moduleNamed(run: Run, text: string): Module {
  const token = moduleToken(text);
  const before = run.draft.modules.get(run.moduleByText.get(token) ?? "");
  if (before !== undefined) return before;
  const id = moduleIdOf(token);
  // Only the record's own modules can go by another id; those made here have the token's.
  const found =
    run.draft.modules.get(id) ??
    (run.draft.base.modules ?? []).find(
      (module) =>
        module.id === text.trim() ||
        moduleToken(module.id) === token ||
        (module.name !== undefined && moduleToken(module.name) === token),
    );
  const isBare = /^\d+(?:\.0)?$/.test(text.trim());
  const module: Module =
    run.draft.modules.get(found?.id ?? id) ??
    ({ id: id as ModuleId, ...(isBare ? {} : { name: text.trim() }) } as Module);
  run.moduleByText.set(token, module.id);
  run.draft.modules.set(module.id, module);
  return module;
}

/** The place a text names, by id or by name; made where the record has none. */
export function placeNamed(run: Run, text: string): PlaceId {
  const name = text.replace(/\s+/g, " ").trim();
  const before = run.placeByText.get(name);
  if (before !== undefined) return before;
  const token = slug(name);
  for (const place of run.draft.places.values())
    if (place.id === name || place.id === `p-${token}` || slug(place.name) === token) {
      run.placeByText.set(name, place.id);
      return place.id;
    }
  const id = `p-${token || "unnamed"}` as PlaceId;
  run.draft.places.set(id, { id, name });
  run.placeByText.set(name, id);
  return id;
}

const ON_OFF: Readonly<Record<string, string>> = { on: "1", off: "0", "1": "1", "0": "0", "?": "?" };

/** Switch positions as a person writes them; undefined where they cannot be told. */
export function readPositions(text: string): string | undefined {
  const tight = text.replace(/[\s,;.|/-]+/g, "");
  if (/^[01?]{1,16}$/.test(tight)) return tight;
  const signs = text
    .trim()
    .toLowerCase()
    .split(/[\s,;|/-]+/)
    .map((word) => ON_OFF[word]);
  return signs.length <= 16 && signs.every((sign) => sign !== undefined) ? signs.join("") : undefined;
}

const kindNamed = (run: Run, text: string): ModuleKind | undefined =>
  run.draft.base.moduleKinds?.find(
    (kind) => kind.id === text || slug(kind.id) === slug(text) || slug(kind.name) === slug(text),
  );

const setFact = (run: Run, row: SurveyRow, module: Module, item: RowCell): Partial<Module> | undefined => {
  const { text } = item;
  switch (item.column.field) {
    case "moduleKind": {
      const kind = kindNamed(run, text);
      if (kind !== undefined) return { kind: kind.id };
      keepUnread(
        run,
        row,
        item,
        "no-such-kind",
        `no module kind "${text}" in the record: describe the kind, then import again`,
      );
      return undefined;
    }
    case "modulePlace":
      return slug(text) === "" ? undefined : { place: placeNamed(run, text) };
    case "positions": {
      const positions = readPositions(text);
      const kindId = module.kind;
      const switches = run.draft.base.moduleKinds?.find((kind) => kind.id === kindId)?.bank?.switches;
      if (positions === undefined)
        keepUnread(
          run,
          row,
          item,
          "positions",
          "positions are 1 (ON), 0 (OFF) or ? for each switch, or the words ON and OFF",
        );
      else if (switches !== undefined && positions.length !== switches)
        keepUnread(
          run,
          row,
          item,
          "positions",
          `this kind has ${switches} switches, the cell tells ${positions.length}: a spreadsheet drops leading zeros, write them as OFF ON ...`,
        );
      else return { positionsFound: positions };
      return undefined;
    }
    default: {
      const digits = /^#?\s*(\d{1,6})(?:\.0)?$/.exec(text)?.[1];
      if (digits !== undefined)
        return item.column.field === "address" ? { address: Number(digits) } : { answersTo: Number(digits) };
      keepUnread(run, row, item, "address", "an address is a whole number");
      return undefined;
    }
  }
};

const MODULE_FIELDS: readonly SurveyField[] = ["moduleKind", "modulePlace", "address", "answersTo", "positions"];

/** Lays the module's own cells of a row over the module. The first row that says something counts; another saying is kept as unread. */
export function applyModuleCells(run: Run, row: SurveyRow): void {
  for (const field of MODULE_FIELDS) {
    const item = takeCell(run, row, row.cells.get(field));
    if (item === undefined) continue;
    if (row.place.kind !== "channel") {
      keepUnread(run, row, item, "no-module", "the row is of a plain fuse, which has no module");
      continue;
    }
    const module = moduleNamed(run, row.place.moduleText);
    const fact = `${module.id}/${field}`;
    const before = run.moduleFacts.get(fact);
    if (before !== undefined) {
      if (before.text !== item.text)
        keepUnread(
          run,
          row,
          item,
          "conflict",
          `${before.where} says "${before.text}" of the same module: correct one of them`,
        );
      continue;
    }
    const set = setFact(run, row, module, item);
    if (set === undefined) {
      if (field === "modulePlace") keepUnread(run, row, item, "place", "no name is left in it");
      continue;
    }
    run.moduleFacts.set(fact, { text: item.text, where: row.where });
    run.draft.modules.set(module.id, { ...module, ...set });
  }
}

/** Words beside a module's name on a line of its own go to the module's notes. */
export function applySection(run: Run, owner: string, rest: string): void {
  const module = moduleNamed(run, owner);
  const text = rest.trim();
  if (text !== "" && !isBlankMark(text))
    run.draft.modules.set(module.id, { ...module, notes: withNote(module.notes, text) });
}
