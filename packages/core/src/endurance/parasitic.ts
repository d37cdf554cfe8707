import { CLASS_FIGURES, loadFiguresOf, nominalVOf } from "../network/index.js";
import {
  type Basis,
  figureBasis,
  figureValue,
  known,
  type Outcome,
  type Source,
  type Span,
  spanOf,
} from "../quantity/index.js";
import type { CoachIndex } from "../record/index.js";
import { type BankGroup, bankGroups } from "./bank-groups.js";
import { drainedOf } from "./bank-run.js";
import type { BatteryOptions, EnduranceAssumed } from "./battery-figures.js";
import { chargeRatePerHour } from "./drain.js";
import { standingDraws } from "./standing.js";

/** One thing that draws with everything off. */
export interface ParasiticDraw {
  readonly kind: "module" | "network" | "detector" | "standby" | "self-discharge";
  readonly id: string;
  readonly name: string;
  /** The record field that gives it, or that would. */
  readonly path: string;
  readonly currentA: number;
  readonly span: Span;
  /** How the record knows it; absent where a class figure stands in. */
  readonly basis?: Basis;
  readonly source: Source;
}

export interface Parasitic {
  readonly draws: readonly ParasiticDraw[];
  readonly totalA: number;
  readonly totalSpan: Span;
  /** By group of banks: from the charge found, at the temperature taken, to nothing. */
  readonly banks: readonly {
    readonly name: string;
    readonly currentA: number;
    readonly hoursToFlat: { readonly nominal: number; readonly span: Span };
  }[];
  /** Of the bank that is flat first. */
  readonly hoursToFlat: { readonly nominal: number; readonly span: Span };
  /** Figures of the batteries that something stood in for. */
  readonly assumed: readonly EnduranceAssumed[];
  /** Detectors whose current is not known: the total is more than it says. */
  readonly needs: readonly string[];
}

const ON_RECORD: Source = { id: "record", name: "the record's own figure", how: "seen" };

interface Own extends ParasiticDraw {
  readonly group: number;
}

/**
 * What drains the batteries with everything switched off, and how long till they are flat? Modules' own electronics, the two-wire network, detectors (never
 * off), loads that stand by on a plain fuse, and the batteries' own loss at rest. Without a charger and without the sun. Missing and refused as
 * `enduranceOf` for what the batteries lack.
 */
export function parasiticOf(index: CoachIndex, options: BatteryOptions = {}): Outcome<Parasitic> {
  const groups = bankGroups(index, options);
  if (groups.kind !== "known") return groups;
  const needs: string[] = [];
  const draws: Own[] = [];
  const groupOf = (test: (group: BankGroup) => boolean): number => Math.max(0, groups.value.findIndex(test));
  for (const module of index.modules.values()) {
    const kind = module.kind === undefined ? undefined : index.moduleKinds.get(module.kind);
    const stated = kind?.quiescentA;
    const own = CLASS_FIGURES.quiescentA;
    const span = stated === undefined ? own.span : spanOf(stated, "current");
    draws.push({
      kind: "module",
      id: module.id,
      name: module.name ?? module.id,
      path:
        kind === undefined
          ? `${index.pathOf("modules", module.id)}.kind`
          : `${index.pathOf("moduleKinds", kind.id)}.quiescentA`,
      currentA: Math.max(0, stated === undefined ? own.value : figureValue(stated)),
      span: { lo: Math.max(0, span.lo), hi: Math.max(0, span.hi) },
      ...(stated === undefined ? { source: own.source } : { basis: figureBasis(stated), source: ON_RECORD }),
      group: groupOf((group) => group.modules.has(module.id)),
    });
  }
  const on = new Set<string>();
  for (const circuit of index.circuits.values()) {
    if (circuit.isSpare === true) continue;
    const isLive = (circuit.loads ?? []).some((id) => index.loads.get(id)?.class === "detector");
    if (!isLive) continue;
    on.add(circuit.id);
    for (const id of circuit.loads ?? []) {
      const load = index.loads.get(id);
      if (load === undefined || index.circuitOfLoad.get(id)?.id !== circuit.id) continue;
      const path = index.pathOf("loads", id);
      const found = loadFiguresOf(load, nominalVOf(index), path);
      if (found.kind !== "known") {
        needs.push(...(found.kind === "missing" ? found.needs : [`${path}.currentA`]));
        continue;
      }
      const figure = load.currentA ?? load.powerW;
      draws.push({
        kind: "detector",
        id,
        name: load.name,
        path: `${path}.${load.currentA === undefined && load.powerW !== undefined ? "powerW" : "currentA"}`,
        currentA: found.value.ratedA,
        span: found.value.ratedSpan,
        ...(figure === undefined ? {} : { basis: figureBasis(figure) }),
        source: ON_RECORD,
        group: groupOf((group) => group.circuits.has(circuit.id)),
      });
    }
  }
  for (const draw of standingDraws(index, (id) => (on.has(id) ? 1 : 0))) {
    const { circuit, ...rest } = draw;
    draws.push({ ...rest, group: circuit === undefined ? 0 : groupOf((group) => group.circuits.has(circuit)) });
  }
  const banks = groups.value.map((group, g) =>
    bankFlat(
      group,
      draws.filter((draw) => draw.group === g),
    ),
  );
  for (const [g, group] of groups.value.entries()) draws.push({ ...selfDraw(group), group: g });
  const plain = draws.map(({ group: _, ...draw }): ParasiticDraw => draw).sort((a, b) => b.currentA - a.currentA);
  const sum = (pick: (draw: ParasiticDraw) => number) => plain.reduce((total, draw) => total + pick(draw), 0);
  return known({
    draws: plain,
    totalA: sum((draw) => draw.currentA),
    totalSpan: { lo: sum((draw) => draw.span.lo), hi: sum((draw) => draw.span.hi) },
    banks,
    hoursToFlat: {
      nominal: Math.min(...banks.map((bank) => bank.hoursToFlat.nominal)),
      span: {
        lo: Math.min(...banks.map((bank) => bank.hoursToFlat.span.lo)),
        hi: Math.min(...banks.map((bank) => bank.hoursToFlat.span.hi)),
      },
    },
    assumed: groups.value.flatMap((group) => group.assumed),
    needs,
  });
}

function bankFlat(group: BankGroup, draws: readonly ParasiticDraw[]): Parasitic["banks"][number] {
  const hours = (end: "nominal" | "least" | "most"): number => {
    const currentA = draws.reduce(
      (sum, draw) => sum + (end === "nominal" ? draw.currentA : end === "least" ? draw.span.hi : draw.span.lo),
      0,
    );
    const charge =
      end === "nominal" ? group.charge.value : end === "least" ? group.charge.span.lo : group.charge.span.hi;
    const perHour = -chargeRatePerHour(drainedOf(group, end), currentA, charge);
    return perHour > 0 ? charge / perHour : Number.POSITIVE_INFINITY;
  };
  return {
    name: group.name,
    currentA: draws.reduce((sum, draw) => sum + draw.currentA, 0),
    hoursToFlat: { nominal: hours("nominal"), span: { lo: hours("least"), hi: hours("most") } },
  };
}

/** The loss at rest as a current, so that it can stand in one table with the rest. */
function selfDraw(group: BankGroup): ParasiticDraw {
  const capacityAh = group.capacityAh.value * group.coldShare.value;
  const bank = group.banks[0]!;
  const assumed = bank.assumed.find((one) => one.path === `${bank.path}.selfDischargePerMonthRatio`);
  const stated = bank.supply.selfDischargePerMonthRatio;
  return {
    kind: "self-discharge",
    id: group.supplies[0]!,
    name: `${group.name}, loss at rest`,
    path: `${bank.path}.selfDischargePerMonthRatio`,
    currentA: group.selfPerHour.value * capacityAh,
    span: { lo: group.selfPerHour.span.lo * capacityAh, hi: group.selfPerHour.span.hi * capacityAh },
    ...(stated === undefined ? {} : { basis: figureBasis(stated) }),
    source: assumed?.source ?? ON_RECORD,
  };
}
