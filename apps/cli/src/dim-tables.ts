import type { CircuitDimming, EvenRamp, KindRamps } from "@fusebook/core/dimming";
import { type Outcome, showQuantity } from "@fusebook/core/quantity";
import { columns } from "./columns.js";
import { amps, ampsOf, lacking, percent, percents } from "./dim-words.js";
import type { Units } from "./records.js";

/** A button's ramp as a table: step, duty, number to set, how bright it looks. */
export function rampText(title: string, ramp: Outcome<EvenRamp>, width: number): string {
  if (ramp.kind !== "known") return `${title}: ${lacking(ramp)}`;
  const { steps, greatestStepLightness, leastStepLightness, isRounded, mergedSteps } = ramp.value;
  const heads = ["step", "duty", ...(isRounded ? ["set"] : []), "looks (L*)", "pulse"];
  const rows = steps.map((step) => [
    String(step.step),
    percent(step.dutyRatio),
    ...(isRounded ? [String(step.level)] : []),
    step.lightness.toFixed(1),
    step.onTimeS === undefined ? "" : `${(step.onTimeS * 1000).toFixed(2)} ms`,
  ]);
  const even = `steps of ${leastStepLightness.toFixed(1)} to ${greatestStepLightness.toFixed(1)} L*`;
  const how = isRounded ? even : `${even}; how finely the module dims is not known, so duties are not rounded`;
  const merged = mergedSteps > 0 ? `; ${mergedSteps} steps left out, the module cannot tell them apart` : "";
  return `${title} (${how}${merged})\n${columns([heads, ...rows], width, [0, 1, 2, 3, 4])}`;
}

/** The two ramps of a kind. */
export const kindRampsText = (ramps: KindRamps, width: number): string =>
  ramps.led.kind === "known" || ramps.filament.kind === "known"
    ? [
        rampText("Ramp that looks even, LEDs on a resistor or linear regulator", ramps.led, width),
        rampText("Ramp that looks even, filaments", ramps.filament, width),
      ].join("\n\n")
    : `Ramp: ${ramps.led.kind === "missing" || ramps.led.kind === "refused" ? lacking(ramps.led) : ""}`;

/** What each sort of lamp of a circuit gives and takes, duty by duty. */
export function lightText({ loads }: CircuitDimming, width: number): string[] {
  const tables = new Map<string, string>();
  for (const { load, table } of loads) {
    if (table.kind !== "known" || tables.has(load.class ?? "")) continue;
    const rows = table.value.map((row) => [
      percent(row.dutyRatio),
      percent(row.luminanceRatio),
      row.lightness.toFixed(0),
      percent(row.powerRatio),
    ]);
    tables.set(
      load.class ?? "",
      `What it gives and takes, ${load.class}\n${columns([["duty", "light", "looks (L*)", "power"], ...rows], width, [0, 1, 2, 3])}`,
    );
  }
  return [...tables.values()];
}

/** What the wire of a circuit carries, duty by duty. */
export function currentsText({ currents, drivers }: CircuitDimming, units: Units, width: number): string {
  if (currents.kind !== "known") return `Currents when dimmed: ${lacking(currents)}`;
  const rows = currents.value.map((row) => [
    percent(row.dutyRatio),
    amps(row.onA, units),
    amps(row.meanA, units),
    amps(row.rmsA, units),
    showQuantity(row.dropV, "voltage", units),
    showQuantity(row.meanW, "power", units),
  ]);
  const without = drivers === undefined ? "" : "; without the capacitors of its drivers, which come below";
  return `Currents when dimmed, this circuit alone on battery${without}\n${columns([["duty", "in the pulse", "mean", "heating (RMS)", "drop while on", "mean power"], ...rows], width, [0, 1, 2, 3, 4, 5])}`;
}

/** What the drivers of a circuit do to it. */
export function driverText({ drivers }: CircuitDimming, units: Units, width: number): string[] {
  if (drivers === undefined) return [];
  if (drivers.kind !== "known") return [`Drivers on PWM: ${lacking(drivers)}`];
  const rows = drivers.value.map(({ dutyRatio, pulses }) => [
    percent(dutyRatio),
    ampsOf(pulses.peakA, units),
    ampsOf(pulses.rmsA, units),
    ampsOf(pulses.meanA, units),
    percents(pulses.runsRatio),
  ]);
  const from = drivers.value.some(({ pulses }) => pulses.knownFrom === "class")
    ? "input capacitor not known: class figure FROM MEMORY, 10 to 1000 microfarad a piece"
    : "input capacitor from the record";
  return [
    `Drivers on PWM: their capacitors are charged anew by every pulse (${from}; peak from 20 microhenry of wire to none, from memory)\n${columns([["duty", "peak", "heating (RMS)", "mean", "driver runs"], ...rows], width)}`,
  ];
}
