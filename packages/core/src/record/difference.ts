import type { CoachRecord } from "./schema/types.js";

type Json = unknown;
type Path = readonly (string | number)[];

/** One change between two records: things by their id, fields by their path. Nothing said of order but where the order changed. */
export type RecordChange =
  | {
      readonly kind: "added";
      readonly collection: string;
      readonly id: string;
      readonly index: number;
      readonly item: Json;
    }
  | {
      readonly kind: "removed";
      readonly collection: string;
      readonly id: string;
      readonly index: number;
      readonly item: Json;
    }
  | {
      readonly kind: "moved";
      readonly collection: string;
      readonly id: string;
      readonly from: number;
      readonly to: number;
    }
  | {
      readonly kind: "changed";
      /** Absent for a field of the record itself. */
      readonly collection?: string;
      readonly id?: string;
      /** From the thing (or the record) to the field. */
      readonly path: Path;
      /** Undefined: the field was, or is, not there. */
      readonly before: Json;
      readonly after: Json;
    };

const isObject = (value: Json): value is Record<string, Json> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

const isSame = (a: Json, b: Json): boolean => {
  if (Object.is(a, b) || a === b) return true;
  if (Array.isArray(a)) return Array.isArray(b) && a.length === b.length && a.every((item, i) => isSame(item, b[i]));
  if (!isObject(a) || !isObject(b)) return false;
  return [...new Set([...Object.keys(a), ...Object.keys(b)])].every((name) => isSame(own(a, name), own(b, name)));
};

const own = (value: Record<string, Json>, name: string): Json => (Object.hasOwn(value, name) ? value[name] : undefined);

/** The ids of a collection in order; undefined where it is no list of things with distinct ids. */
const idsOf = (value: Json): string[] | undefined => {
  if (!Array.isArray(value)) return undefined;
  const ids = value.map((item) => (isObject(item) ? own(item, "id") : undefined));
  return ids.every((id) => typeof id === "string") && new Set(ids).size === ids.length ? (ids as string[]) : undefined;
};

type FieldChange = { readonly path: Path; readonly before: Json; readonly after: Json };

const fieldChanges = (before: Json, after: Json, path: Path): FieldChange[] => {
  if (isSame(before, after)) return [];
  if (isObject(before) && isObject(after))
    return [...new Set([...Object.keys(before), ...Object.keys(after)])].flatMap((name) =>
      fieldChanges(own(before, name), own(after, name), [...path, name]),
    );
  if (Array.isArray(before) && Array.isArray(after) && before.length === after.length)
    return before.flatMap((item, i) => fieldChanges(item, after[i], [...path, i]));
  return [{ path, before, after }];
};

/** The members of a sequence that need not move: a longest rising run of their old places. */
const staying = (oldPlaces: readonly number[]): Set<number> => {
  const tails: number[] = [];
  const previous: number[] = [];
  oldPlaces.forEach((place, i) => {
    let low = 0;
    let high = tails.length;
    while (low < high) {
      const mid = (low + high) >> 1;
      if ((oldPlaces[tails[mid] ?? 0] ?? 0) < place) low = mid + 1;
      else high = mid;
    }
    previous[i] = low > 0 ? (tails[low - 1] ?? -1) : -1;
    tails[low] = i;
  });
  const stay = new Set<number>();
  for (let i = tails.at(-1) ?? -1; i >= 0; i = previous[i] ?? -1) stay.add(i);
  return stay;
};

const collectionChanges = (
  collection: string,
  before: readonly Json[],
  after: readonly Json[],
  oldIds: readonly string[],
  newIds: readonly string[],
): RecordChange[] => {
  const oldPlace = new Map(oldIds.map((id, i) => [id, i]));
  const newSet = new Set(newIds);
  const changes: RecordChange[] = [];
  oldIds.forEach((id, index) => {
    if (!newSet.has(id)) changes.push({ kind: "removed", collection, id, index, item: before[index] });
  });
  const common = newIds.flatMap((id, to) => (oldPlace.has(id) ? [{ id, to, from: oldPlace.get(id) ?? 0 }] : []));
  const stay = staying(common.map((item) => item.from));
  common.forEach(({ id, from, to }, i) => {
    if (!stay.has(i)) changes.push({ kind: "moved", collection, id, from, to });
  });
  newIds.forEach((id, index) => {
    if (!oldPlace.has(id)) changes.push({ kind: "added", collection, id, index, item: after[index] });
  });
  for (const { id, from, to } of common)
    for (const field of fieldChanges(before[from], after[to], []))
      changes.push({ kind: "changed", collection, id, ...field });
  return changes;
};

/** What changed from one record to another. Applied to `before` by `applyDifference`, it gives `after`. */
export function differenceOf(before: CoachRecord, after: CoachRecord): RecordChange[] {
  const changes: RecordChange[] = [];
  for (const name of new Set([...Object.keys(before), ...Object.keys(after)])) {
    const old = own(before, name);
    const next = own(after, name);
    const newIds = idsOf(next);
    const oldIds = old === undefined && newIds !== undefined ? [] : idsOf(old);
    if (newIds === undefined || oldIds === undefined)
      changes.push(...fieldChanges(old, next, [name]).map((field) => ({ kind: "changed" as const, ...field })));
    else {
      if (old === undefined) changes.push({ kind: "changed", path: [name], before: undefined, after: [] });
      changes.push(...collectionChanges(name, (old ?? []) as Json[], next as Json[], oldIds, newIds));
    }
  }
  return changes;
}

const withField = (value: Json, path: Path, next: Json): Json => {
  const [head, ...rest] = path;
  if (head === undefined) return next;
  if (Array.isArray(value)) return value.map((item, i) => (i === head ? withField(item, rest, next) : item));
  const fields = Object.entries(isObject(value) ? value : {}).filter(([name]) => name !== head);
  const inner = isObject(value) ? own(value, String(head)) : undefined;
  const result = rest.length === 0 ? next : withField(inner, rest, next);
  // Entries, not assignment: a field may be called `__proto__`.
  return Object.fromEntries(result === undefined ? fields : [...fields, [String(head), result]]);
};

/** The record that a difference leads to. Neither argument is changed. */
export function applyDifference(before: CoachRecord, changes: readonly RecordChange[]): CoachRecord {
  let record: Json = before;
  for (const change of changes)
    if (change.kind === "changed" && change.collection === undefined)
      record = withField(record, change.path, change.after);
  const collections = new Set(
    changes.flatMap((change) => (change.collection === undefined ? [] : [change.collection])),
  );
  for (const collection of collections) {
    const items = new Map<string, Json>(
      ((own(record as Record<string, Json>, collection) ?? []) as { id: string }[]).map((item) => [item.id, item]),
    );
    const landing: { readonly id: string; readonly index: number; readonly item: Json }[] = [];
    for (const change of changes) {
      if (change.collection !== collection) continue;
      if (change.kind === "changed")
        items.set(change.id ?? "", withField(items.get(change.id ?? ""), change.path, change.after));
    }
    for (const change of changes) {
      if (change.collection !== collection || change.kind === "changed") continue;
      if (change.kind === "moved") landing.push({ id: change.id, index: change.to, item: items.get(change.id) });
      if (change.kind === "added") landing.push({ id: change.id, index: change.index, item: change.item });
      items.delete(change.id);
    }
    const list = [...items.values()];
    for (const { index, item } of landing.sort((a, b) => a.index - b.index)) list.splice(index, 0, item);
    record = withField(record, [collection], list);
  }
  return record as CoachRecord;
}
