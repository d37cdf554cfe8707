import type {
  CircuitId,
  CoachIndex,
  FixedChoice,
  Job,
  LoadId,
  ModuleId,
  ModuleKindId,
  PlanMeans,
  Wish,
} from "../record/index.js";
import { fixedChoicesOf } from "./fixed-choices.js";
import type { PlanFault } from "./plan.js";

/** A wish with what it counts, in thousandths of a weight (whole numbers, so that sums are exact). */
export interface ValuedWish {
  readonly load: LoadId;
  readonly wish: Exclude<Wish, "none">;
  readonly value: number;
}

/** What is asked of a plan: wishes, limits and what may not be touched. */
export interface Demand {
  readonly wishes: ReadonlyMap<LoadId, ValuedWish>;
  /** Every load's wish as this job sees it, for the engine that judges dim blocks: the job wins over the load's own. */
  readonly wishOfEach: ReadonlyMap<string, Wish>;
  readonly mustFactor: number;
  /** What a load that must not dim counts when no wish says so, in thousandths. */
  readonly steadyValue: number;
  readonly budgetCents: number | undefined;
  readonly maxMinutes: number | undefined;
  readonly locked: ReadonlySet<ModuleId>;
  readonly forbidden: ReadonlySet<ModuleKindId>;
  /** Circuits that stay on their channel as they are, those of locked loads among them. */
  readonly lockedCircuits: ReadonlySet<CircuitId>;
  /** What the user has settled beforehand, each with its path. */
  readonly fixedChoices: readonly { readonly choice: FixedChoice; readonly path: string }[];
  /** What no plan may do. */
  readonly ruledOut: ReadonlySet<PlanMeans>;
  readonly faults: readonly PlanFault[];
}

/** Weight of a wish that states none. Ours: every wish alike. */
export const DEFAULT_WEIGHT = 1;

const milli = (weight: number): number => Math.round(weight * 1000);

interface RawWish {
  readonly load: LoadId;
  readonly wish: Wish;
  readonly weight: number;
  readonly path: string;
}

function rawWishes(index: CoachIndex, job: Job | undefined, jobPath: string, faults: PlanFault[]): RawWish[] {
  const raw = new Map<LoadId, RawWish>();
  for (const load of index.record.loads ?? [])
    if (load.wish !== undefined && index.loads.get(load.id) === load)
      raw.set(load.id, {
        load: load.id,
        wish: load.wish,
        weight: load.wishWeight ?? DEFAULT_WEIGHT,
        path: `${index.pathOf("loads", load.id)}.wish`,
      });
  const said = new Map<LoadId, Wish>();
  (job?.wishes ?? []).forEach((wish, i) => {
    const path = `${jobPath}.wishes[${i}]`;
    const load = index.loads.get(wish.load);
    if (load === undefined) {
      faults.push({
        path: `${path}.load`,
        code: "wish-for-unknown-load",
        message: `${path}.load: the record has no load ${wish.load}; correct the id or add the load`,
      });
      return;
    }
    const before = said.get(wish.load);
    if (before !== undefined && before !== wish.wish)
      faults.push({
        path,
        code: "wishes-contradict",
        message: `${path}: ${wish.load} is asked to be ${before} and ${wish.wish}; the first is kept, remove one`,
      });
    if (before !== undefined) return;
    said.set(wish.load, wish.wish);
    raw.set(wish.load, {
      load: wish.load,
      wish: wish.wish,
      weight: wish.weight ?? load.wishWeight ?? DEFAULT_WEIGHT,
      path,
    });
  });
  return [...raw.values()].filter((wish) => {
    if (Number.isFinite(wish.weight) && wish.weight > 0) return true;
    faults.push({
      path: wish.path,
      code: "weight-not-positive",
      message: `${wish.path}: a weight is a number above 0, got ${wish.weight}; the wish is left out until it has one`,
    });
    return false;
  });
}

/** The smallest power of ten that makes the least must outweigh every nice-to-have together. */
function mustFactorOf(wishes: readonly RawWish[]): number {
  const nice = wishes.reduce((sum, wish) => sum + (wish.wish === "nice-to-dim" ? milli(wish.weight) : 0), 0);
  const least = wishes.reduce(
    (low, wish) =>
      wish.wish === "must-dim" || wish.wish === "must-stay-steady" ? Math.min(low, milli(wish.weight)) : low,
    milli(DEFAULT_WEIGHT),
  );
  let factor = 1;
  while (least > 0 && factor * least <= nice && factor < 1e6) factor *= 10;
  return factor;
}

const limitOf = (value: number | undefined, path: string, what: string, faults: PlanFault[]): number | undefined => {
  if (value === undefined) return undefined;
  if (Number.isFinite(value) && value >= 0) return value;
  faults.push({
    path,
    code: `${what}-not-valid`,
    message: `${path}: a ${what} is 0 or more, got ${value}; it is left out until corrected`,
  });
  return undefined;
};

const knownIds = <Id extends string>(
  ids: readonly Id[] | undefined,
  has: (id: Id) => boolean,
  path: string,
  what: string,
  faults: PlanFault[],
): Set<Id> => {
  const set = new Set<Id>();
  (ids ?? []).forEach((id, i) => {
    if (has(id)) set.add(id);
    else
      faults.push({
        path: `${path}[${i}]`,
        code: `unknown-${what}`,
        message: `${path}[${i}]: the record has no ${what} ${id}; correct the id or remove it`,
      });
  });
  return set;
};

/** What does this job ask for, and what is wrong in the asking? A job's wish wins over the load's own. */
export function demandOf(index: CoachIndex, job?: Job): Demand {
  const faults: PlanFault[] = [];
  const jobPath = job === undefined ? "jobs" : index.pathOf("jobs", job.id);
  const raw = rawWishes(index, job, jobPath, faults);
  const mustFactor = mustFactorOf(raw);
  const wishes = new Map<LoadId, ValuedWish>();
  for (const { load, wish, weight } of raw)
    if (wish !== "none")
      wishes.set(load, { load, wish, value: milli(weight) * (wish === "nice-to-dim" ? 1 : mustFactor) });
  const limits = job?.constraints;
  const at = `${jobPath}.constraints`;
  const budget = limitOf(limits?.budget, `${at}.budget`, "budget", faults);
  const maxMinutes = limitOf(limits?.maxMinutes, `${at}.maxMinutes`, "time", faults);
  const lockedCircuits = knownIds(
    limits?.lockedCircuits,
    (id) => index.circuits.has(id),
    `${at}.lockedCircuits`,
    "circuit",
    faults,
  );
  for (const load of knownIds(limits?.lockedLoads, (id) => index.loads.has(id), `${at}.lockedLoads`, "load", faults)) {
    const circuit = index.circuitOfLoad.get(load);
    if (circuit !== undefined) lockedCircuits.add(circuit.id);
  }
  const locked = knownIds(
    limits?.lockedModules,
    (id) => index.modules.has(id),
    `${at}.lockedModules`,
    "module",
    faults,
  );
  const forbidden = knownIds(
    limits?.forbiddenKinds,
    (id) => index.moduleKinds.has(id),
    `${at}.forbiddenKinds`,
    "module-kind",
    faults,
  );
  return {
    wishes,
    wishOfEach: new Map<string, Wish>(
      [...index.loads.values()].map((load) => [load.id, wishes.get(load.id)?.wish ?? "none"]),
    ),
    mustFactor,
    steadyValue: milli(DEFAULT_WEIGHT) * mustFactor,
    budgetCents: budget === undefined ? undefined : Math.floor(budget * 100 + 1e-6),
    maxMinutes,
    locked,
    forbidden,
    lockedCircuits,
    fixedChoices: fixedChoicesOf(index, limits?.fixedChoices ?? [], `${at}.fixedChoices`, {
      lockedModules: locked,
      lockedCircuits,
      forbidden,
      faults,
    }),
    ruledOut: new Set(limits?.rulesOut ?? []),
    faults,
  };
}
