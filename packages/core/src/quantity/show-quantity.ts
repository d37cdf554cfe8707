import { digitsOf } from "./round.js";
import type { Dimension } from "./units.js";

export type UnitChoice = "us" | "metric" | "both";

const INCH_M = 0.0254;

const feetAndInches = (lengthM: number): string => {
  const inches = lengthM / INCH_M;
  if (inches < 36) return `${digitsOf(inches, 3, 1)} in`;
  const whole = Math.round(inches);
  const rest = whole % 12;
  return rest === 0 ? `${whole / 12} ft` : `${(whole - rest) / 12} ft ${rest} in`;
};

const metres = (lengthM: number): string =>
  Math.abs(lengthM) < 1 ? `${digitsOf(lengthM * 1000)} mm` : `${digitsOf(lengthM)} m`;

const scaled = (value: number, steps: readonly (readonly [least: number, factor: number, unit: string])[]): string => {
  const size = Math.abs(value);
  const [, factor, unit] = steps.find(([least]) => size >= least) ?? steps.at(-1)!;
  return `${digitsOf(value * factor)} ${unit}`;
};

const hoursAndMinutes = (timeS: number): string => {
  if (timeS < 90) return `${digitsOf(timeS)} s`;
  const minutes = Math.round(timeS / 60);
  const rest = minutes % 60;
  if (minutes < 60) return `${minutes} min`;
  return rest === 0 ? `${minutes / 60} h` : `${(minutes - rest) / 60} h ${rest} min`;
};

const METRIC: Readonly<Record<Dimension, (value: number) => string>> = {
  current: (currentA) =>
    Math.abs(currentA) < 0.1 && currentA !== 0 ? `${digitsOf(currentA * 1000)} mA` : `${digitsOf(currentA)} A`,
  power: (powerW) => `${digitsOf(powerW, Math.abs(powerW) >= 1000 ? 4 : 3)} W`,
  voltage: (voltV) =>
    Math.abs(voltV) < 0.1 && voltV !== 0 ? `${digitsOf(voltV * 1000)} mV` : `${digitsOf(voltV, 4, 2)} V`,
  length: metres,
  section: (areaMm2) => `${digitsOf(areaMm2)} mm²`,
  resistance: (resistanceOhm) =>
    scaled(resistanceOhm, [
      [1e6, 1e-6, "MΩ"],
      [1000, 0.001, "kΩ"],
      [1, 1, "Ω"],
      [0, 1000, "mΩ"],
    ]),
  temperature: (celsius) => `${digitsOf(celsius, 4, 1)} °C`,
  capacity: (capacityAh) => `${digitsOf(capacityAh)} Ah`,
  time: hoursAndMinutes,
  frequency: (hz) => (hz >= 1000 ? `${digitsOf(hz / 1000)} kHz` : `${digitsOf(hz)} Hz`),
};

const US: Partial<Record<Dimension, (value: number) => string>> = {
  length: feetAndInches,
  temperature: (celsius) => `${digitsOf(celsius * 1.8 + 32, 4, 0)} °F`,
};

/**
 * How is this quantity written for a reader? `value` in the record's own unit. US and metric differ for lengths and temperatures; `both` writes the
 * US form with the metric one in brackets: `18 ft (5.49 m)`. Three digits that count, volts to the hundredth, lengths in US to the inch.
 */
export const showQuantity = (value: number, dimension: Dimension, units: UnitChoice): string => {
  const metric = METRIC[dimension](value);
  const us = US[dimension]?.(value) ?? metric;
  if (units === "metric" || us === metric) return metric;
  return units === "us" ? us : `${us} (${metric})`;
};
