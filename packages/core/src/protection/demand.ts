import { loadFiguresOf, nominalVOf } from "../network/index.js";
import { COMMON_PRACTICE, known, missing, type Outcome, refused, type Source } from "../quantity/index.js";
import type { Circuit, CoachIndex, LoadClass } from "../record/index.js";

/** What part of the connected current of a sort of load runs at one time, in the worst hour that really happens. */
export interface DemandFactor {
  readonly sort: "light" | "steady" | "moving" | "outlet" | "signal";
  readonly ratio: number;
  readonly why: string;
}

/** All of it is common practice, no source. */
export const DEMAND_SOURCE: Source = COMMON_PRACTICE;

export const DEMAND_FACTORS: readonly DemandFactor[] = [
  { sort: "light", ratio: 0.8, why: "an evening with most lamps lit" },
  { sort: "steady", ratio: 1, why: "heaters, fans and electronics that run for hours" },
  { sort: "moving", ratio: 0, why: "pumps, motors and actuators run one at a time: only the greatest counts, in full" },
  { sort: "outlet", ratio: 0.5, why: "half of what is plugged in draws" },
  { sort: "signal", ratio: 1, why: "coils, valves, calls and detectors: small, and counted whole" },
];

const SORT: Readonly<Record<LoadClass, DemandFactor["sort"]>> = {
  "led-resistor": "light",
  "led-linear": "light",
  "led-driver": "light",
  filament: "light",
  motor: "moving",
  pump: "moving",
  actuator: "moving",
  fan: "steady",
  valve: "signal",
  "relay-coil": "signal",
  "heater-control": "signal",
  "inverter-remote": "signal",
  detector: "signal",
  electronics: "steady",
  outlet: "outlet",
  "resistive-heater": "steady",
};

export interface Demand {
  /** All loads at their rated current. */
  readonly connectedA: number;
  /** With the demand factors, and the greatest moving load in full. */
  readonly demandA: number;
  readonly rows: readonly {
    readonly sort: DemandFactor["sort"];
    readonly connectedA: number;
    readonly demandA: number;
  }[];
  readonly greatestMoving: { readonly loadId: string; readonly currentA: number } | undefined;
  readonly source: Source;
}

/** Connected current and demand of these circuits. Missing: every load's current or class that is wanted; a load of unknown class cannot be given a factor. */
export function demandOf(index: CoachIndex, circuits: readonly Circuit[]): Outcome<Demand> {
  const needs: string[] = [];
  const nominalV = nominalVOf(index);
  const bySort = new Map<DemandFactor["sort"], number>();
  let greatest: { loadId: string; currentA: number } | undefined;
  for (const circuit of circuits)
    for (const id of circuit.loads ?? []) {
      const load = index.loads.get(id);
      if (load === undefined) continue;
      const path = index.pathOf("loads", id);
      const figures = loadFiguresOf(load, nominalV, path);
      if (load.class === undefined) needs.push(`${path}.class`);
      if (figures.kind !== "known") needs.push(...(figures.kind === "missing" ? figures.needs : [`${path}.currentA`]));
      if (load.class === undefined || figures.kind !== "known") continue;
      const sort = SORT[load.class];
      const { ratedA } = figures.value;
      bySort.set(sort, (bySort.get(sort) ?? 0) + ratedA);
      if (sort === "moving" && ratedA > (greatest?.currentA ?? 0)) greatest = { loadId: id, currentA: ratedA };
    }
  if (needs.length > 0) return missing(...new Set(needs));
  const rows = DEMAND_FACTORS.flatMap(({ sort, ratio }) => {
    const connectedA = bySort.get(sort);
    if (connectedA === undefined) return [];
    const own = ratio * connectedA + (sort === "moving" ? (greatest?.currentA ?? 0) : 0);
    return [{ sort, connectedA, demandA: own }];
  });
  const total = (of: (row: (typeof rows)[number]) => number) => rows.reduce((sum, row) => sum + of(row), 0);
  return known({
    connectedA: total((row) => row.connectedA),
    demandA: total((row) => row.demandA),
    rows,
    greatestMoving: greatest,
    source: DEMAND_SOURCE,
  });
}

/** The demand of one module's channels. Refused: `no-such-module`. */
export function moduleDemandOf(index: CoachIndex, moduleId: string): Outcome<Demand> {
  if (!index.modules.has(moduleId as never)) return refused("no-such-module", `the record has no module ${moduleId}`);
  return demandOf(index, index.circuitsOfModule.get(moduleId) ?? []);
}
