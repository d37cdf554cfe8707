import type {
  Attachment,
  Cable,
  Circuit,
  CoachRecord,
  Control,
  Load,
  Module,
  ModuleKind,
  Place,
  RecordNode,
  Supply,
} from "./schema/types.js";

/** A record with its ids looked up. A duplicate id keeps the first; the rule `duplicate-id` reports it. */
export interface CoachIndex {
  readonly record: CoachRecord;
  readonly places: ReadonlyMap<string, Place>;
  readonly supplies: ReadonlyMap<string, Supply>;
  readonly nodes: ReadonlyMap<string, RecordNode>;
  readonly cables: ReadonlyMap<string, Cable>;
  readonly moduleKinds: ReadonlyMap<string, ModuleKind>;
  readonly modules: ReadonlyMap<string, Module>;
  readonly circuits: ReadonlyMap<string, Circuit>;
  readonly loads: ReadonlyMap<string, Load>;
  readonly controls: ReadonlyMap<string, Control>;
  readonly attachments: ReadonlyMap<string, Attachment>;
  /** Circuits of a module, in channel order. */
  readonly circuitsOfModule: ReadonlyMap<string, readonly Circuit[]>;
  /** The circuit that feeds a load (the first, if several claim it). */
  readonly circuitOfLoad: ReadonlyMap<string, Circuit>;
  /** `circuits[3]`, by the object's own collection and id, for the subject path of a finding. */
  pathOf(collection: Collection, id: string): string;
}

export type Collection =
  | "places"
  | "supplies"
  | "nodes"
  | "cables"
  | "moduleKinds"
  | "modules"
  | "circuits"
  | "loads"
  | "controls"
  | "readings"
  | "jobs"
  | "attachments";

const byId = <T extends { id: string }>(items: readonly T[] | undefined): Map<string, T> => {
  const map = new Map<string, T>();
  for (const item of items ?? []) if (!map.has(item.id)) map.set(item.id, item);
  return map;
};

/** Looks up every id of a record once. */
export function indexRecord(record: CoachRecord): CoachIndex {
  const circuitsOfModule = new Map<string, Circuit[]>();
  const circuitOfLoad = new Map<string, Circuit>();
  for (const circuit of record.circuits ?? []) {
    if (circuit.module !== undefined) {
      const list = circuitsOfModule.get(circuit.module) ?? [];
      list.push(circuit);
      circuitsOfModule.set(circuit.module, list);
    }
    for (const load of circuit.loads ?? []) if (!circuitOfLoad.has(load)) circuitOfLoad.set(load, circuit);
  }
  for (const list of circuitsOfModule.values()) list.sort((a, b) => (a.channel ?? 0) - (b.channel ?? 0));
  const paths = new Map<string, string>();
  return {
    record,
    places: byId(record.places),
    supplies: byId(record.supplies),
    nodes: byId(record.nodes),
    cables: byId(record.cables),
    moduleKinds: byId(record.moduleKinds),
    modules: byId(record.modules),
    circuits: byId(record.circuits),
    loads: byId(record.loads),
    controls: byId(record.controls),
    attachments: byId(record.attachments),
    circuitsOfModule,
    circuitOfLoad,
    pathOf(collection, id) {
      if (paths.size === 0)
        for (const name of [
          "places",
          "supplies",
          "nodes",
          "cables",
          "moduleKinds",
          "modules",
          "circuits",
          "loads",
          "controls",
          "readings",
          "jobs",
          "attachments",
        ] as const)
          (record[name] ?? []).forEach((item: { id: string }, i: number) => {
            const key = `${name}/${item.id}`;
            if (!paths.has(key)) paths.set(key, `${name}[${i}]`);
          });
      return paths.get(`${collection}/${id}`) ?? collection;
    },
  };
}
