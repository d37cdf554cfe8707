import type { CoachIndex, LoadId, ModuleId, PlaceId } from "../record/index.js";
import { bankPositions } from "../switchbank/index.js";
import { stockOf } from "./candidate.js";
import { wholeMinutes } from "./labour.js";
import { centsOf, type Money, placesTo } from "./merge.js";
import type { Option } from "./option.js";
import type { CircuitMove, FuseChange, ModuleChoice, Plan, Rewire, SteadyFeed } from "./plan.js";
import { planIdOf } from "./plan-id.js";

/** A plan before its unmet wishes are explained. */
export type BarePlan = Omit<Plan, "unmet" | "mustsLeft">;

/** Work on wires, beside what is done to the modules. */
export interface WireWork {
  readonly moves: readonly CircuitMove[];
  readonly steadyFeeds: readonly SteadyFeed[];
  readonly rewires: readonly Rewire[];
  readonly fuses: readonly FuseChange[];
  /** Fuses that change with the wires included, access not. */
  readonly minutes: number;
  readonly partsCents: number;
  /** Modules at which wires are worked on. */
  readonly modules: readonly ModuleId[];
  /** Modules taken out that may be fitted elsewhere, by kind. */
  readonly freed: ReadonlyMap<string, number>;
  readonly needs: readonly string[];
}

const NO_WIRE_WORK: WireWork = {
  moves: [],
  steadyFeeds: [],
  rewires: [],
  fuses: [],
  minutes: 0,
  partsCents: 0,
  modules: [],
  freed: new Map(),
  needs: [],
};

/** What an option brings to every plan it is in. */
interface Brought {
  readonly choice: ModuleChoice | undefined;
  readonly places: readonly PlaceId[];
  readonly detectors: readonly LoadId[];
  readonly needs: readonly string[];
}

/** Remembers what each option brings: a front asks for the same few many times. */
export type ChoiceMemory = Map<Option, Brought>;

function broughtBy(index: CoachIndex, memory: ChoiceMemory, option: Option): Brought {
  const known = memory.get(option);
  if (known !== undefined) return known;
  const brought = option.isTouched
    ? {
        choice: makeChoice(index, option),
        places: placesTo(index, option.module.place),
        detectors: detectorsOn(index, option.module.id),
        needs: needsOf(index, option),
      }
    : { choice: makeChoice(index, option), places: [], detectors: [], needs: [] };
  memory.set(option, brought);
  return brought;
}

const detectorsOn = (index: CoachIndex, module: ModuleId): LoadId[] =>
  (index.circuitsOfModule.get(module) ?? []).flatMap((circuit) =>
    (circuit.loads ?? []).filter((load) => index.loads.get(load)?.class === "detector"),
  );

function needsOf(index: CoachIndex, option: Option): string[] {
  const needs: string[] = [];
  if (option.isReplaced && option.kind?.installMin === undefined && option.kind !== undefined)
    needs.push(`${index.pathOf("moduleKinds", option.kind.id)}.installMin`);
  if (placesTo(index, option.module.place).length === 0)
    needs.push(`${index.pathOf("modules", option.module.id)}.place`);
  return needs;
}

function makeChoice(index: CoachIndex, option: Option): ModuleChoice | undefined {
  const { module, kind } = option;
  if (kind === undefined) return undefined;
  const base = {
    module: module.id,
    from: option.present?.id,
    to: kind.id,
    isReplaced: option.isReplaced,
    isTouched: option.isTouched,
    enabledBefore: option.enabledBefore,
    enables: option.enables,
  };
  if (!option.isTouched) return { ...base, positions: module.positionsFound, positionsNeed: [] };
  const kindPath = index.pathOf("moduleKinds", kind.id);
  const positions = bankPositions(kind.bank, { address: module.address, enables: option.enables });
  if (positions.kind === "known") return { ...base, positions: positions.value, positionsNeed: [] };
  const needs =
    positions.kind === "refused"
      ? [`${kindPath}.bank`]
      : positions.needs.map((need) =>
          need === "address" ? `${index.pathOf("modules", module.id)}.address` : `${kindPath}.${need}`,
        );
  return { ...base, positions: undefined, positionsNeed: needs };
}

function partsOf(
  index: CoachIndex,
  touched: readonly Option[],
  freed: ReadonlyMap<string, number>,
  needs: Set<string>,
): number {
  const counts = new Map<string, number>();
  let partsCents = 0;
  for (const option of touched) {
    if (!option.isReplaced || option.kind === undefined) continue;
    const used = (counts.get(option.kind.id) ?? 0) + 1;
    counts.set(option.kind.id, used);
    if (used <= stockOf(option.kind) + (freed.get(option.kind.id) ?? 0)) continue;
    if (option.kind.price === undefined) needs.add(`${index.pathOf("moduleKinds", option.kind.id)}.price`);
    partsCents += centsOf(option.kind.price);
  }
  return partsCents;
}

function accessOf(index: CoachIndex, opened: ReadonlySet<PlaceId>, needs: Set<string>): number {
  let minutes = 0;
  for (const place of opened) {
    const accessMin = index.places.get(place)?.accessMin;
    if (accessMin === undefined) needs.add(`${index.pathOf("places", place)}.accessMin`);
    minutes += wholeMinutes(accessMin);
  }
  return minutes;
}

/** The plan that these options make, with its parts, labour and minutes. */
export function makePlan(
  index: CoachIndex,
  money: Money,
  options: readonly Option[],
  memory: ChoiceMemory = new Map(),
  wires: WireWork = NO_WIRE_WORK,
): BarePlan {
  const sorted = [...options].sort((a, b) => a.order - b.order);
  const touched: Option[] = [];
  const modules: ModuleChoice[] = [];
  const fuses: FuseChange[] = [];
  const dims: LoadId[] = [];
  const spoiled: LoadId[] = [];
  const detectors: LoadId[] = [];
  const needs = new Set<string>();
  const opened = new Set<PlaceId>();
  let value = 0;
  let minutes = 0;
  for (const option of sorted) {
    const brought = broughtBy(index, memory, option);
    if (brought.choice !== undefined) modules.push(brought.choice);
    dims.push(...option.dims);
    spoiled.push(...option.spoiled);
    value += option.value;
    if (!option.isTouched) continue;
    touched.push(option);
    fuses.push(...option.fuses);
    detectors.push(...brought.detectors);
    minutes += option.minutes;
    for (const place of brought.places) opened.add(place);
    for (const need of brought.needs) needs.add(need);
  }
  fuses.push(...wires.fuses);
  minutes += wires.minutes;
  for (const need of wires.needs) needs.add(need);
  for (const module of wires.modules) {
    for (const place of placesTo(index, index.modules.get(module)?.place)) opened.add(place);
    if (placesTo(index, index.modules.get(module)?.place).length === 0)
      needs.add(`${index.pathOf("modules", module)}.place`);
    for (const load of detectorsOn(index, module)) if (!detectors.includes(load)) detectors.push(load);
  }
  if (touched.length > 0 || wires.modules.length > 0) for (const place of money.alwaysOpened) opened.add(place);
  minutes += accessOf(index, opened, needs);
  const partsCents = partsOf(index, touched, wires.freed, needs) + wires.partsCents;
  if (minutes > 0 && index.record.policy?.labourRatePerHour === undefined) needs.add("policy.labourRatePerHour");
  const labourCents = Math.round((minutes * money.rateCentsPerHour) / 60);
  return {
    id: planIdOf(touched, wires),
    modules,
    fuses,
    partsCents,
    labourCents,
    costCents: partsCents + labourCents,
    minutes,
    modulesTouched: touched.length,
    moves: wires.moves,
    steadyFeeds: wires.steadyFeeds,
    rewires: wires.rewires,
    wiresMoved: wires.moves.length + wires.steadyFeeds.length + wires.rewires.length,
    dims,
    spoiled,
    wishValue: value / 1000,
    detectors,
    costNeeds: [...needs],
  };
}
