import type { Finding, FindingCode } from "../findings/index.js";
import type { CoachIndex } from "../record/index.js";

/** A look-up that knows everything and lists only some: rules go through the list and look the rest up. */
class ListsOnly<K, V> extends Map<K, V> {
  readonly #listed: readonly [K, V][];

  constructor(all: ReadonlyMap<K, V>, ids: ReadonlySet<string>) {
    super(all);
    this.#listed = [...all].filter(([id]) => ids.has(id as unknown as string));
  }

  override *values(): MapIterator<V> {
    for (const [, value] of this.#listed) yield value;
  }

  override *entries(): MapIterator<[K, V]> {
    yield* this.#listed;
  }

  override [Symbol.iterator](): MapIterator<[K, V]> {
    return this.entries();
  }
}

const COLLECTIONS = ["loads", "circuits", "cables", "modules"] as const;

/**
 * For each rule, the coach as it is with only those subjects listed that the rule has open findings about. A rule looks at one subject after another, so what
 * it says of those is the same, and the others cost nothing. Rules about nodes, supplies and the coach itself see everything.
 */
export function narrowedFor(open: Iterable<Finding>): (index: CoachIndex, code: FindingCode) => CoachIndex {
  const subjects = new Map<FindingCode, Map<string, Set<string>>>();
  for (const { code, subject } of open) {
    const collection = /^[a-zA-Z]+/.exec(subject.path)?.[0] ?? "";
    const of = subjects.get(code) ?? new Map<string, Set<string>>();
    subjects.set(code, of);
    of.set(collection, (of.get(collection) ?? new Set<string>()).add(subject.id));
  }
  return (index, code) => {
    const of = subjects.get(code);
    const [only] = of === undefined || of.size !== 1 ? [] : [...of];
    const collection = COLLECTIONS.find((name) => name === only?.[0]);
    if (collection === undefined || only === undefined) return index;
    return { ...index, [collection]: new ListsOnly(index[collection] as ReadonlyMap<string, unknown>, only[1]) };
  };
}

/** Rules that look at one circuit or load after another and at nothing between them. */
const ONE_BY_ONE: ReadonlySet<FindingCode> = new Set([
  "inrush-over-fuse",
  "fault-over-conductor",
  "fault-not-cleared",
  "drop-over-limit",
  "voltage-under-minimum",
  "load-over-fuse",
]);

/** The coach with only these circuits and loads listed, for the rules that allow it. */
export const listedAbout =
  (ids: ReadonlySet<string>): ((index: CoachIndex, code: FindingCode) => CoachIndex) =>
  (index, code) =>
    ONE_BY_ONE.has(code)
      ? { ...index, circuits: new ListsOnly(index.circuits, ids), loads: new ListsOnly(index.loads, ids) }
      : index;
