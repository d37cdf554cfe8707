import { type DriverWorst, driverWorst } from "../dimming/index.js";
import type { Outcome } from "../quantity/index.js";
import type { Circuit, ModuleKind } from "../record/index.js";
import type { CoachContext } from "./context.js";
import type { Said } from "./define-rule.js";
import { isDimmedToday } from "./enabled-blocks.js";
import { loadsOf } from "./leans.js";
import { minutesFor } from "./settle.js";

/** A circuit that dims today and has drivers on it, with what they do to the channel. */
export interface DriverCircuitTold {
  readonly circuit: Circuit;
  readonly kind: ModuleKind;
  readonly worst: DriverWorst;
  /** What would narrow it: each driver's capacitor. */
  readonly settledBy: NonNullable<Said["settledBy"]>;
}

const told = new WeakMap<CoachContext, readonly DriverCircuitTold[]>();

/** Drivers on channels that dim today, computed once for all rules that ask. */
export function driversDimmedToday(context: CoachContext): readonly DriverCircuitTold[] {
  const made = told.get(context);
  if (made !== undefined) return made;
  const { index } = context;
  const found: DriverCircuitTold[] = [];
  for (const circuit of index.circuits.values()) {
    const drivers = loadsOf(context, circuit).filter((load) => load.class === "led-driver");
    if (drivers.length === 0) continue;
    const dims = isDimmedToday(context, circuit);
    const kind = index.moduleKinds.get(index.modules.get(circuit.module ?? "")?.kind ?? "");
    if (dims.kind !== "known" || !dims.value || kind === undefined) continue;
    const worst: Outcome<DriverWorst> = driverWorst(index, circuit, kind);
    if (worst.kind !== "known") continue;
    const settledBy = drivers
      .filter((load) => load.inputCapacitanceF === undefined)
      .map((load) => ({
        path: `${index.pathOf("loads", load.id)}.inputCapacitanceF`,
        instrument: "ask" as const,
        minutes: minutesFor(index, "ask", load.place),
      }));
    found.push({ circuit, kind, worst: worst.value, settledBy });
  }
  told.set(context, found);
  return found;
}
