import {
  COMMON_PRACTICE,
  type Figure,
  figureValue,
  known,
  missing,
  type Outcome,
  refused,
  type Source,
  type Span,
  spanOf,
} from "../quantity/index.js";
import type { Load } from "../record/index.js";
import { type CapacitorInput, capacitorInput } from "./capacitor-input.js";
import { FILAMENT_HEAT_SOURCE, FILAMENT_TIME_CONSTANT, filamentPulse } from "./filament-heat.js";

/** What smooths the light: nothing, the heat of a filament, the capacitor of a driver, or something of which we know nothing. */
export type LightFilter = "none" | "thermal" | "capacitor" | "unknown";

/** How far the light swings at one duty: (max - min) / (max + min), and how that is known. */
export interface Modulation {
  readonly ratio: Span;
  readonly nominalRatio: number;
  readonly filter: LightFilter;
  /** `record`: from the lamp's own figures; `class`: a class figure stood in; `worst-case`: nothing known, so that the light may go out in between. */
  readonly knownFrom: "physics" | "record" | "class" | "worst-case";
  /** Fields of the load that would narrow it. */
  readonly wouldSettle: readonly string[];
  readonly source: Source;
}

/** What feeds a driver: without it the modulation of a driver is the worst case. */
export type DriverFeed = Pick<CapacitorInput, "supplyV" | "loopOhm" | "powerW" | "dropOutV">;

export type LampFigures = Pick<Load, "class" | "filamentTimeConstantS" | "inputCapacitanceF" | "quantity">;

/**
 * How far does the light of this load swing while PWM dims it, through the lamp's own filtering? LEDs on a resistor or a linear regulator: 1,
 * nothing filters. Filaments: their heat, with the record's `filamentTimeConstantS` or the class's span. Drivers: where the input capacitor and the
 * feed are known, 0 if the driver never runs dry and 1 if it does; else the worst case, anywhere up to 1. At duty 0 and 1 nothing swings.
 * Missing: `class`. Refused: `no-light`, `duty-out-of-range`, `frequency-out-of-range`.
 */
export function modulationDepth(
  load: LampFigures,
  pwmHz: number,
  dutyRatio: number,
  feed: DriverFeed | undefined = undefined,
): Outcome<Modulation> {
  if (!(dutyRatio >= 0 && dutyRatio <= 1))
    return refused("duty-out-of-range", `duty lies between 0 and 1, got ${dutyRatio}`);
  if (!(pwmHz > 0 && Number.isFinite(pwmHz)))
    return refused("frequency-out-of-range", `the PWM frequency is above 0 Hz, got ${pwmHz}`);
  const isPulsed = dutyRatio > 0 && dutyRatio < 1;
  const exactly = (ratio: number, filter: LightFilter, knownFrom: Modulation["knownFrom"], source: Source) =>
    known<Modulation>({
      ratio: { lo: ratio, hi: ratio },
      nominalRatio: ratio,
      filter,
      knownFrom,
      wouldSettle: [],
      source,
    });
  switch (load.class) {
    case "led-resistor":
    case "led-linear":
      return exactly(isPulsed ? 1 : 0, "none", "physics", COMMON_PRACTICE);
    case "filament":
      return isPulsed
        ? throughHeat(load.filamentTimeConstantS, pwmHz, dutyRatio)
        : exactly(0, "thermal", "physics", FILAMENT_HEAT_SOURCE);
    case "led-driver":
      return isPulsed
        ? throughCapacitor(load, pwmHz, dutyRatio, feed)
        : exactly(0, "capacitor", "physics", COMMON_PRACTICE);
    case undefined:
      return missing("class");
    default:
      return refused("no-light", `a load of class ${load.class} gives no light to dim`);
  }
}

/** A filament this much quicker than the PWM goes out between pulses, as far as any limit cares. */
const GOES_OUT = 0.005;

function throughHeat(stated: Figure | undefined, pwmHz: number, dutyRatio: number): Outcome<Modulation> {
  const nominalS = stated === undefined ? FILAMENT_TIME_CONSTANT.nominalS : figureValue(stated);
  const spanS = stated === undefined ? FILAMENT_TIME_CONSTANT.spanS : spanOf(stated, "time");
  if (!(nominalS > 0))
    return refused("figure-out-of-range", `filamentTimeConstantS: wanted above 0 s, got ${nominalS}`);
  // A filament without any slowness would go out between pulses.
  const swing = (timeS: number): number =>
    timeS * pwmHz > GOES_OUT ? filamentPulse(timeS, pwmHz, dutyRatio).modulationRatio : 1;
  return known({
    ratio: { lo: swing(spanS.hi), hi: swing(spanS.lo) },
    nominalRatio: swing(nominalS),
    filter: "thermal",
    knownFrom: stated === undefined ? "class" : "record",
    wouldSettle: stated === undefined ? ["filamentTimeConstantS"] : [],
    source: stated === undefined ? FILAMENT_TIME_CONSTANT.source : FILAMENT_HEAT_SOURCE,
  });
}

function throughCapacitor(
  load: LampFigures,
  pwmHz: number,
  dutyRatio: number,
  feed: DriverFeed | undefined,
): Outcome<Modulation> {
  const worst = known<Modulation>({
    ratio: { lo: 0, hi: 1 },
    nominalRatio: 1,
    filter: "unknown",
    knownFrom: "worst-case",
    wouldSettle: load.inputCapacitanceF === undefined ? ["inputCapacitanceF"] : [],
    source: COMMON_PRACTICE,
  });
  if (load.inputCapacitanceF === undefined || feed === undefined) return worst;
  const span = spanOf(load.inputCapacitanceF, "any");
  const swing = (capacitanceF: number): number | undefined => {
    const pulses = capacitorInput({
      ...feed,
      capacitanceF: capacitanceF * (load.quantity ?? 1),
      pwmHz,
      dutyRatio,
    });
    return pulses.kind === "known" ? (pulses.value.runsRatio >= 1 - 1e-9 ? 0 : 1) : undefined;
  };
  const [few, nominal, most] = [span.lo, figureValue(load.inputCapacitanceF), span.hi].map(swing);
  if (few === undefined || nominal === undefined || most === undefined) return worst;
  return known({
    ratio: { lo: Math.min(few, nominal, most), hi: Math.max(few, nominal, most) },
    nominalRatio: nominal,
    filter: "capacitor",
    knownFrom: "record",
    wouldSettle: [],
    source: COMMON_PRACTICE,
  });
}
