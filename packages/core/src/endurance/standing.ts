import {
  type Basis,
  COMMON_PRACTICE,
  type Figure,
  figureBasis,
  figureValue,
  type Source,
  type Span,
  spanOf,
} from "../quantity/index.js";
import type { CircuitId, CoachIndex, LoadClass } from "../record/index.js";
import { CLASS_STANDING } from "./class-battery.js";

/** A steady draw that no switch of a module turns off. */
export interface StandingDraw {
  readonly kind: "network" | "standby";
  readonly id: string;
  readonly name: string;
  /** The record field it is from, or that would replace what stands in for it. */
  readonly path: string;
  /** The circuit it hangs on; none for the two-wire network. */
  readonly circuit?: CircuitId;
  readonly currentA: number;
  readonly span: Span;
  /** How the record knows it; absent where a class figure stood in. */
  readonly basis?: Basis;
  readonly source: Source;
}

/** Classes that draw a little while they are off. Common practice, no source. */
const STANDS_BY: ReadonlySet<LoadClass> = new Set(["electronics", "heater-control", "inverter-remote"]);

const ON_RECORD: Source = { id: "record", name: "the record's own figure", how: "seen" };

/**
 * What the two-wire network draws, and what loads draw that are off and still have their feed: those on a plain fuse (no module to switch it off) without a
 * switch of their own, of a class that stands by or with `standbyA` on record. A circuit that is on for `shareOf` of the time stands by for the rest of it.
 */
export function standingDraws(index: CoachIndex, shareOf: (circuit: CircuitId) => number): StandingDraw[] {
  const draws: StandingDraw[] = [];
  const put = (
    draw: Pick<StandingDraw, "kind" | "id" | "name" | "path" | "circuit">,
    figure: Figure | undefined,
    own: { readonly value: number; readonly span: Span; readonly source: Source },
    times = 1,
  ): void => {
    const span = figure === undefined ? own.span : spanOf(figure, "current");
    const value = figure === undefined ? own.value : figureValue(figure);
    draws.push({
      ...draw,
      currentA: Math.max(0, value) * times,
      span: { lo: Math.max(0, span.lo) * times, hi: Math.max(0, span.hi) * times },
      ...(figure === undefined ? { source: own.source } : { basis: figureBasis(figure), source: ON_RECORD }),
    });
  };
  if (index.record.network !== undefined || index.modules.size > 0)
    put(
      { kind: "network", id: "network", name: "two-wire network, controller and buttons", path: "network.quiescentA" },
      index.record.network?.quiescentA,
      CLASS_STANDING.networkA,
    );
  for (const circuit of index.circuits.values()) {
    const offShare = 1 - shareOf(circuit.id);
    if (circuit.isSpare === true || offShare <= 0) continue;
    for (const id of circuit.loads ?? []) {
      const load = index.loads.get(id);
      if (load === undefined || index.circuitOfLoad.get(id)?.id !== circuit.id) continue;
      const isLive = circuit.module === undefined && load.hasOwnSwitch !== true;
      if (!isLive || !(load.standbyA !== undefined || (load.class !== undefined && STANDS_BY.has(load.class))))
        continue;
      put(
        { kind: "standby", id, name: load.name, path: `${index.pathOf("loads", id)}.standbyA`, circuit: circuit.id },
        load.standbyA,
        CLASS_STANDING.standbyA,
        (load.quantity ?? 1) * offShare,
      );
    }
  }
  return draws;
}

/** Common practice, no source: what stands by and what does not. */
export const STANDING_SOURCE = COMMON_PRACTICE;
