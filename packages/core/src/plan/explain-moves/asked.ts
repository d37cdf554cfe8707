import type {
  Cable,
  CableId,
  Circuit,
  CircuitId,
  CoachIndex,
  CoachRecord,
  Job,
  Load,
  LoadId,
  Module,
  ModuleId,
  ModuleKind,
  ModuleKindId,
  NodeId,
  RecordNode,
  Wish,
} from "../../record/index.js";
import { indexRecord } from "../../record/index.js";
import { type Demand, demandOf } from "../demand.js";

/** A record and the job on it: what an explanation may suppose otherwise, one thing at a time. */
export interface Asked {
  readonly record: CoachRecord;
  readonly job: Job;
}

/** The same question with one thing supposed otherwise. */
export type Supposing = (asked: Asked) => Asked;

const NO_JOB = { id: "asked", title: "asked" } as Job;

/** The question as it stands. Without a job: the wishes of the record and no limits. */
export const askedOf = (index: CoachIndex, job: Job | undefined): Asked => ({
  record: index.record,
  job: job ?? NO_JOB,
});

/** Reads a supposed question like any other. */
export function readAsked(asked: Asked): { readonly index: CoachIndex; readonly demand: Demand } {
  const jobs = (asked.record.jobs ?? []).filter((job) => job.id !== asked.job.id);
  const index = indexRecord({ ...asked.record, jobs: [...jobs, asked.job] });
  return { index, demand: demandOf(index, asked.job) };
}

export const supposing = (asked: Asked, supposed: readonly Supposing[]): Asked =>
  supposed.reduce((so, suppose) => suppose(so), asked);

type Limits = NonNullable<Job["constraints"]>;

export const withLimits =
  (change: (limits: Limits) => Partial<Limits>): Supposing =>
  ({ record, job }) => ({
    record,
    job: { ...job, constraints: { ...job.constraints, ...change(job.constraints ?? {}) } },
  });

const changed = <Item extends { readonly id: string }>(
  items: readonly Item[] | undefined,
  id: string,
  change: (item: Item) => Item,
): Item[] => (items ?? []).map((item) => (item.id === id ? change(item) : item));

/** The job asks this of the load, whatever was asked before. */
export const withWish =
  (load: LoadId, wish: Wish, weight: number | undefined): Supposing =>
  ({ record, job }) => ({
    record,
    job: {
      ...job,
      wishes: [
        { load, wish, ...(weight === undefined ? {} : { weight }) },
        ...(job.wishes ?? []).filter((each) => each.load !== load),
      ],
    },
  });

export const withCircuit =
  (id: CircuitId, change: (circuit: Circuit) => Circuit): Supposing =>
  ({ record, job }) => ({ job, record: { ...record, circuits: changed(record.circuits, id, change) } });

export const withLoad =
  (id: LoadId, change: (load: Load) => Load): Supposing =>
  ({ record, job }) => ({ job, record: { ...record, loads: changed(record.loads, id, change) } });

export const withModule =
  (id: ModuleId, change: (module: Module) => Module): Supposing =>
  ({ record, job }) => ({ job, record: { ...record, modules: changed(record.modules, id, change) } });

export const withKind =
  (id: ModuleKindId, change: (kind: ModuleKind) => ModuleKind): Supposing =>
  ({ record, job }) => ({ job, record: { ...record, moduleKinds: changed(record.moduleKinds, id, change) } });

export const withAnotherKind =
  (kind: ModuleKind): Supposing =>
  ({ record, job }) => ({ job, record: { ...record, moduleKinds: [...(record.moduleKinds ?? []), kind] } });

export const withAnotherCircuit =
  (circuit: Circuit): Supposing =>
  ({ record, job }) => ({ job, record: { ...record, circuits: [...(record.circuits ?? []), circuit] } });

export const withNode =
  (id: NodeId, change: (node: RecordNode) => RecordNode): Supposing =>
  ({ record, job }) => ({ job, record: { ...record, nodes: changed(record.nodes, id, change) } });

export const withCable =
  (id: CableId, change: (cable: Cable) => Cable): Supposing =>
  ({ record, job }) => ({ job, record: { ...record, cables: changed(record.cables, id, change) } });
