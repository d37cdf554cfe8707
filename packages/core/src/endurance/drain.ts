import { TAPER_FROM_RATIO } from "./class-battery.js";
import { chargeLostPerHour, type RatedBattery } from "./peukert.js";

/** A group of banks as one battery at its temperature. */
export interface Drained extends RatedBattery {
  readonly selfPerHour: number;
  readonly chargeBack: number;
  /** False only for the bound of a battery that takes all it is given up to full. */
  readonly tapers: boolean;
}

/**
 * How fast does the state of charge change at this current out of the battery, a part of full in an hour? Drawn: Peukert at rated hours. Charged (below
 * zero): amperes over capacity times what can be taken out again, less and less above four fifths full. Its own loss at rest counts always.
 */
export function chargeRatePerHour(battery: Drained, currentA: number, chargeRatio: number): number {
  if (currentA >= 0) return -chargeLostPerHour(battery, currentA) - battery.selfPerHour;
  const taper = battery.tapers ? Math.min(1, Math.max(0, (1 - chargeRatio) / (1 - TAPER_FROM_RATIO))) : 1;
  return (-currentA / battery.capacityAh) * battery.chargeBack * taper - battery.selfPerHour;
}
