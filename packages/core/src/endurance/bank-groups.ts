import { buildCoach, type CoachNetwork } from "../network/index.js";
import { known, missing, type Outcome, refused } from "../quantity/index.js";
import type { CircuitId, CoachIndex, ModuleId, SupplyId } from "../record/index.js";
import {
  type BatteryBank,
  type BatteryOptions,
  batteryBankOf,
  type EnduranceAssumed,
  type Spread,
} from "./battery-figures.js";
import { capacityAtHoursAh } from "./peukert.js";

/** Batteries that closed cables join: they rest at the same volts, and so at the same charge, and are counted as one. */
export interface BankGroup {
  readonly supplies: readonly SupplyId[];
  readonly name: string;
  readonly banks: readonly BatteryBank[];
  /** All of them together, at the first one's rated hours and 25 C. */
  readonly capacityAh: Spread;
  readonly ratedHours: number;
  readonly exponent: Spread;
  readonly coldShare: Spread;
  readonly temperatureC: Spread;
  readonly selfPerHour: Spread;
  readonly chargeBack: Spread;
  readonly charge: Spread;
  /** Circuits and modules that this group feeds. */
  readonly circuits: ReadonlySet<CircuitId>;
  readonly modules: ReadonlySet<ModuleId>;
  /** Chargers, alternator feeds and solar on its side. */
  readonly helpers: ReadonlySet<SupplyId>;
  readonly assumed: readonly EnduranceAssumed[];
}

const hull = (all: readonly Spread[], weight: readonly number[]): Spread => {
  const total = weight.reduce((sum, w) => sum + w, 0);
  return {
    value: all.reduce((sum, one, i) => sum + one.value * weight[i]!, 0) / total,
    span: { lo: Math.min(...all.map((one) => one.span.lo)), hi: Math.max(...all.map((one) => one.span.hi)) },
  };
};

/**
 * The battery banks of the coach, joined ones together. Missing: no battery, where its ends connect, or its capacity. Refused as `batteryBankOf`, and
 * `unlike-banks` where lead and lithium are joined: they do not share their current by size.
 */
export function bankGroups(index: CoachIndex, options: BatteryOptions): Outcome<readonly BankGroup[]> {
  const everything = new Set([...index.circuits.values()].filter((c) => c.isSpare !== true).map((c) => c.id));
  const built = buildCoach(index, { name: "who feeds what", on: everything, chargerOn: true, engineOn: true });
  if (built.kind !== "known") return built;
  const coach = built.value;
  const batteries = coach.supplies.filter((one) => one.supply.kind === "battery");
  if (batteries.length === 0) return missing("supplies");
  const groups: BankGroup[] = [];
  const taken = new Set<string>();
  for (const first of batteries) {
    if (taken.has(first.supply.id)) continue;
    const joined = batteries.filter((one) => first.toFeeds.isReached[one.positive] === 1);
    for (const one of joined) taken.add(one.supply.id);
    const banks: BatteryBank[] = [];
    for (const one of joined) {
      const bank = batteryBankOf(index, one.supply, options);
      if (bank.kind !== "known") return bank;
      banks.push(bank.value);
    }
    const unlike = banks.find((bank) => bank.family !== banks[0]!.family);
    if (unlike !== undefined)
      return refused(
        "unlike-banks",
        `${unlike.path}.chemistry: ${unlike.supply.name} and ${banks[0]!.supply.name} are joined and of unlike chemistry; write down the cable or switch between them as open, or each on its own record`,
      );
    groups.push(groupOf(coach, banks, first.toFeeds.isReached));
  }
  return known(groups);
}

function groupOf(coach: CoachNetwork, banks: readonly BatteryBank[], isReached: Uint8Array): BankGroup {
  const ratedHours = banks[0]!.ratedHours;
  const atHours = (bank: BatteryBank, capacityAh: number, exponent: number): number =>
    bank.ratedHours === ratedHours
      ? capacityAh
      : capacityAtHoursAh({ capacityAh, ratedHours: bank.ratedHours, exponent }, ratedHours);
  const each = banks.map((bank) => atHours(bank, bank.capacityAh.value, bank.exponent.value));
  const ends = (end: "lo" | "hi") =>
    banks.reduce((sum, bank) => {
      const both = [bank.exponent.span.lo, bank.exponent.span.hi].map((k) =>
        atHours(bank, bank.capacityAh.span[end], k),
      );
      return sum + (end === "lo" ? Math.min(...both) : Math.max(...both));
    }, 0);
  const of = (pick: (bank: BatteryBank) => Spread): Spread => hull(banks.map(pick), each);
  const first = coach.supplies.find((one) => one.supply.kind === "battery");
  const isOwn = (feedNode: number): boolean =>
    feedNode >= 0
      ? isReached[feedNode] === 1
      : first !== undefined && banks.some((bank) => bank.supply.id === first.supply.id);
  return {
    supplies: banks.map((bank) => bank.supply.id),
    name: banks.map((bank) => bank.supply.name).join(" and "),
    banks,
    capacityAh: { value: each.reduce((sum, one) => sum + one, 0), span: { lo: ends("lo"), hi: ends("hi") } },
    ratedHours,
    exponent: of((bank) => bank.exponent),
    coldShare: of((bank) => bank.coldShare),
    temperatureC: of((bank) => bank.temperatureC),
    selfPerHour: of((bank) => bank.selfPerHour),
    chargeBack: of((bank) => bank.chargeBack),
    charge: of((bank) => bank.charge),
    circuits: new Set(coach.circuits.filter((one) => isOwn(one.feedNode)).map((one) => one.circuit.id)),
    modules: new Set(
      coach.modules
        .filter(({ module }) => isOwn(coach.nodeOf.get(module.feedNode ?? "") ?? -1))
        .map(({ module }) => module.id),
    ),
    helpers: new Set(
      [...coach.index.supplies.values()]
        .filter((supply) => supply.kind !== "battery" && isReached[coach.nodeOf.get(supply.node ?? "") ?? -1] === 1)
        .map((supply) => supply.id),
    ),
    assumed: banks.flatMap((bank) => bank.assumed),
  };
}
