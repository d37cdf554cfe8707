import type { CoachIndex, LoadId, PlaceId } from "../record/index.js";
import { bankPositions } from "../switchbank/index.js";
import { stockOf } from "./candidate.js";
import { wholeMinutes } from "./labour.js";
import { centsOf, isolationPlaces, type Money, placesTo } from "./merge.js";
import type { Option } from "./option.js";
import type { ModuleChoice, Plan } from "./plan.js";
import { planIdOf } from "./plan-id.js";

/** A plan before its unmet wishes are explained. */
export type BarePlan = Omit<Plan, "unmet" | "mustsLeft">;

/** Remembers the choice each option makes: a front asks for the same few many times. */
export type ChoiceMemory = Map<Option, ModuleChoice | undefined>;

function choiceOf(index: CoachIndex, memory: ChoiceMemory, option: Option): ModuleChoice | undefined {
  if (!memory.has(option)) memory.set(option, makeChoice(index, option));
  return memory.get(option);
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

function partsOf(index: CoachIndex, touched: readonly Option[], needs: Set<string>): number {
  const counts = new Map<string, number>();
  let partsCents = 0;
  for (const option of touched) {
    if (!option.isReplaced || option.kind === undefined) continue;
    const used = (counts.get(option.kind.id) ?? 0) + 1;
    counts.set(option.kind.id, used);
    if (used <= stockOf(option.kind)) continue;
    if (option.kind.price === undefined) needs.add(`${index.pathOf("moduleKinds", option.kind.id)}.price`);
    partsCents += centsOf(option.kind.price);
  }
  return partsCents;
}

function minutesOf(index: CoachIndex, touched: readonly Option[], needs: Set<string>): number {
  const opened = new Set<PlaceId>(touched.length > 0 ? isolationPlaces(index) : []);
  let minutes = 0;
  for (const option of touched) {
    minutes += option.minutes;
    if (option.isReplaced && option.kind?.installMin === undefined && option.kind !== undefined)
      needs.add(`${index.pathOf("moduleKinds", option.kind.id)}.installMin`);
    const places = placesTo(index, option.module.place);
    if (places.length === 0) needs.add(`${index.pathOf("modules", option.module.id)}.place`);
    for (const place of places) opened.add(place);
  }
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
): BarePlan {
  const sorted = [...options].sort((a, b) => a.order - b.order);
  const touched = sorted.filter((option) => option.isTouched);
  const needs = new Set<string>();
  const partsCents = partsOf(index, touched, needs);
  const minutes = minutesOf(index, touched, needs);
  if (minutes > 0 && index.record.policy?.labourRatePerHour === undefined) needs.add("policy.labourRatePerHour");
  const labourCents = Math.round((minutes * money.rateCentsPerHour) / 60);
  const detectors: LoadId[] = touched.flatMap((option) =>
    (index.circuitsOfModule.get(option.module.id) ?? []).flatMap((circuit) =>
      (circuit.loads ?? []).filter((load) => index.loads.get(load)?.class === "detector"),
    ),
  );
  return {
    id: planIdOf(sorted),
    modules: sorted.flatMap((option) => choiceOf(index, memory, option) ?? []),
    fuses: sorted.flatMap((option) => option.fuses),
    partsCents,
    labourCents,
    costCents: partsCents + labourCents,
    minutes,
    modulesTouched: touched.length,
    wiresMoved: 0,
    dims: sorted.flatMap((option) => option.dims),
    spoiled: sorted.flatMap((option) => option.spoiled),
    wishValue: sorted.reduce((sum, option) => sum + option.value, 0) / 1000,
    detectors,
    costNeeds: [...needs],
  };
}
