import { readFileSync } from "node:fs";
import { type CoachRecord, type Job, readRecord } from "@fusebook/core/record";

/** A synthetic retrofit: loads on the channels of modules, kinds that split a module into groups that dim together. */
export interface PlanInstance {
  readonly name: string;
  readonly kinds: readonly {
    readonly id: string;
    readonly groups: "none" | "all" | "halves" | "thirds" | "each";
    readonly price: number;
    readonly switchedA: number;
    readonly dimmedA: number;
    readonly totalA: number;
  }[];
  readonly modules: readonly { readonly channels: number; readonly kind: string }[];
  readonly loads: readonly {
    readonly module: number;
    readonly channel: number;
    readonly currentA: number;
    readonly mayDim: boolean;
    readonly value: number;
  }[];
}

/** What may move: nothing, circuits within their module, circuits to a neighbouring module too. */
export type PlanVariant = "fixed" | "within" | "neighbour";

/** The instances know nothing of modules freed and fitted elsewhere. */
export const INSTANCE_JOB = {
  id: "j1",
  title: "as the instance has it",
  constraints: { rulesOut: ["reuse"] },
} as unknown as Job;

export const planInstance = (modules: number): PlanInstance =>
  JSON.parse(readFileSync(new URL(`./data/plan-fixed-${modules}.json`, import.meta.url), "utf8")) as PlanInstance;

const exact = (value: number) => ({ value, basis: "measured", plusMinus: 0 });

function blocksOf(groups: string, channels: number): number[][] {
  const all = Array.from({ length: channels }, (_, i) => i + 1);
  const split = (parts: number): number[][] =>
    Array.from({ length: parts }, (_, part) =>
      all.filter((channel) => Math.min(parts - 1, Math.floor(((channel - 1) * parts) / channels)) === part),
    );
  switch (groups) {
    case "all":
      return [all];
    case "halves":
      return split(2);
    case "thirds":
      return split(3);
    case "each":
      return all.map((channel) => [channel]);
    default:
      return [];
  }
}

/**
 * The instance as a coach. A kind of the instance fits positions of ten and of twelve channels, so it becomes one kind for each, which fits its own number only.
 * The plain kind costs 60 where it is fitted anew, as in the instance's own rule. Present modules stand with no block enabled.
 * Channels without a load are marked spare: the instance says that nothing hangs on them.
 * Where circuits may move, a move costs 40 within a module and 120 to a neighbour, at a rate of one a minute; setting a bank costs nothing there.
 */
export function recordOfInstance(instance: PlanInstance, variant: PlanVariant = "fixed"): CoachRecord {
  const sizes = [...new Set(instance.modules.map((module) => module.channels))];
  const kindId = (kind: string, channels: number): string => `${kind}-${channels}`;
  const moduleKinds = sizes.flatMap((channels) =>
    instance.kinds.map((kind) => {
      const blocks = blocksOf(kind.groups, channels).map((each, i) => ({ id: `b${i + 1}`, channels: each }));
      return {
        id: kindId(kind.id, channels),
        name: kindId(kind.id, channels),
        channels,
        output: blocks.length > 0 ? "pwm" : "relay",
        ratedSwitchedA: kind.switchedA,
        ratedDimmedA: kind.dimmedA,
        ratedTotalA: kind.totalA,
        price: kind.groups === "none" ? kind.price + 60 : kind.price,
        fitsInPlaceOf: instance.kinds.map((other) => kindId(other.id, channels)),
        dimBlocks: blocks,
      };
    }),
  );
  const neighbours = (m: number): string[] =>
    [m - 1, m + 1].filter((other) => other >= 0 && other < instance.modules.length).map((other) => `m${other}`);
  const freedom = (m: number) => {
    if (variant === "fixed") return {};
    return { canMove: true, ...(variant === "neighbour" ? { reach: neighbours(m) } : {}) };
  };
  const modules = instance.modules.map((module, m) => ({ id: `m${m}`, kind: kindId(module.kind, module.channels) }));
  const circuits = instance.modules.flatMap((module, m) =>
    Array.from({ length: module.channels }, (_, i) => {
      const at = instance.loads.findIndex((load) => load.module === m && load.channel === i + 1);
      const id = `c${m}.${i + 1}`;
      const place = { id, module: `m${m}`, channel: i + 1 };
      return at < 0 ? { ...place, isSpare: true } : { ...place, loads: [`l${at}`], ...freedom(m) };
    }),
  );
  const loads = instance.loads.map((load, i) => ({
    id: `l${i}`,
    name: `load ${i}`,
    class: load.mayDim ? "led-resistor" : "pump",
    currentA: exact(load.currentA),
    ...(load.value > 0 ? { wish: "nice-to-dim", wishWeight: load.value } : {}),
  }));
  const read = readRecord({
    format: "fusebook/1",
    id: instance.name,
    coach: { name: instance.name, isInvented: true },
    ...(variant === "fixed"
      ? {}
      : { policy: { labourRatePerHour: 60, moveWithinMin: 40, moveBetweenMin: 120, bankSettingMin: 0 } }),
    moduleKinds,
    modules,
    circuits,
    loads,
  });
  if (read.kind === "refused")
    throw new Error(read.faults.map((fault) => `${fault.path}: ${fault.message}`).join("\n"));
  return read.record;
}
