import { pathText } from "./fault.js";
import type { Collection } from "./index-of.js";
import { RECORD_SHAPE, type Shape } from "./schema/shape.js";
import type { CoachRecord } from "./schema/types.js";

/** One place in a record that names something by its id. */
export interface Reference {
  /** Where it stands: `circuits[3].module`. */
  readonly path: string;
  readonly id: string;
  /** Where the id should be found; `any` for points that a probe can touch. */
  readonly target: Collection | "dimBlocks" | "any";
}

export interface DanglingReference extends Reference {
  /** `dangling`: nothing has this id; `duplicate-id`: a second thing with the same id in one collection (`path` is the second's). */
  readonly code: "dangling" | "duplicate-id";
}

/** Fields that hold the id of a point a probe can touch. Places along the two-wire network are words, not ids: the controller has none. */
const POINT_PATHS = /^readings\[\d+\]\.(point|against)\.at$/;
const POINT_COLLECTIONS = ["nodes", "supplies", "modules", "circuits", "loads", "cables", "controls"] as const;

type Path = readonly (string | number)[];

const walk = (value: unknown, shape: Shape, path: Path, found: Reference[]): void => {
  if (typeof value === "string") {
    const text = pathText(path);
    // An object's own id is no reference to itself.
    const isOwn = path.length === 3 && path[2] === "id";
    if (shape.idOf !== undefined && !isOwn) found.push({ path: text, id: value, target: shape.idOf as Collection });
    else if (POINT_PATHS.test(text)) found.push({ path: text, id: value, target: "any" });
    return;
  }
  if (Array.isArray(value)) {
    const item = shape.item;
    if (item !== undefined) value.forEach((inner, i) => void walk(inner, item, [...path, i], found));
    return;
  }
  if (typeof value !== "object" || value === null) return;
  for (const [name, inner] of shape.fields ?? [])
    if (Object.hasOwn(value, name)) walk((value as Record<string, unknown>)[name], inner, [...path, name], found);
  if (path.at(-1) === "state" && Object.hasOwn(value, "dutyRatio"))
    for (const id of Object.keys((value as { dutyRatio?: object }).dutyRatio ?? {}))
      found.push({ path: pathText([...path, "dutyRatio", id]), id, target: "circuits" });
};

/** Every place in a record that names something by its id, in document order; dim blocks of kinds and plans included. */
export function referencesOf(record: CoachRecord): Reference[] {
  const found: Reference[] = [];
  walk(record, RECORD_SHAPE, [], found);
  for (const { path, id } of blockReferences(record)) found.push({ path, id, target: "dimBlocks" });
  return found;
}

/** Ids of dim blocks, each with the blocks it must be one of. */
function* blockReferences(record: CoachRecord): Generator<{ path: string; id: string; among: ReadonlySet<string> }> {
  const blocksOfKind = new Map<string, ReadonlySet<string>>();
  for (const [i, kind] of (record.moduleKinds ?? []).entries()) {
    const among = new Set<string>((kind.dimBlocks ?? []).map((block) => block.id));
    blocksOfKind.set(kind.id, among);
    for (const [j, option] of (kind.bank?.options ?? []).entries())
      for (const [k, id] of option.enables.entries())
        yield { path: `moduleKinds[${i}].bank.options[${j}].enables[${k}]`, id, among };
  }
  for (const [i, job] of (record.jobs ?? []).entries())
    for (const [j, planned] of (job.chosen?.modules ?? []).entries())
      for (const [k, id] of planned.enables.entries())
        yield {
          path: `jobs[${i}].chosen.modules[${j}].enables[${k}]`,
          id,
          among: blocksOfKind.get(planned.kind) ?? new Set(),
        };
}

/** Every reference that leads nowhere, and every id used twice in one collection, by the path of the field. */
export function danglingReferences(record: CoachRecord): DanglingReference[] {
  const ids = new Map<string, Set<string>>();
  const faults: DanglingReference[] = [];
  for (const [name, shape] of RECORD_SHAPE.fields ?? []) {
    if (shape.item?.fields?.get("id")?.idOf !== name) continue;
    const seen = new Set<string>();
    const items = (record as unknown as Record<string, readonly { id: string }[] | undefined>)[name] ?? [];
    for (const [i, item] of items.entries()) {
      if (seen.has(item.id))
        faults.push({ path: `${name}[${i}].id`, id: item.id, target: name as Collection, code: "duplicate-id" });
      seen.add(item.id);
    }
    ids.set(name, seen);
  }
  for (const reference of referencesOf(record)) {
    if (reference.target === "dimBlocks") continue;
    const isFound =
      reference.target === "any"
        ? POINT_COLLECTIONS.some((name) => ids.get(name)?.has(reference.id) === true)
        : ids.get(reference.target)?.has(reference.id) === true;
    if (!isFound) faults.push({ ...reference, code: "dangling" });
  }
  for (const { path, id, among } of blockReferences(record))
    if (!among.has(id)) faults.push({ path, id, target: "dimBlocks", code: "dangling" });
  return faults;
}
