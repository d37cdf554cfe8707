/** A battery as the law sees it: what it holds when drawn empty in `ratedHours`, and its exponent. */
export interface RatedBattery {
  readonly capacityAh: number;
  readonly ratedHours: number;
  /** At least 1; 1 is a battery that gives the same at any current. */
  readonly exponent: number;
}

/** The steady current that empties the battery in its rated hours, A. */
export const ratedCurrentOfBatteryA = ({ capacityAh, ratedHours }: RatedBattery): number => capacityAh / ratedHours;

/**
 * How many hours does a full battery last at a steady current? Peukert at rated hours: `t = H * (C / (I * H))^k`, table `peukert` (seen in two
 * derivations). The popular `t = C / I^k` takes C as the one-ampere capacity and is wrong for a capacity rated at 20 hours. The law as it stands, at
 * any current: below the rated current it promises more than the mark, which `chargeLostPerHour` does not follow. No current: no end.
 *
 * @example peukertHours({ capacityAh: 100, ratedHours: 20, exponent: 1.2 }, 10) // 8.706
 */
export function peukertHours(battery: RatedBattery, currentA: number): number {
  const { capacityAh, ratedHours, exponent } = battery;
  return currentA > 0 ? ratedHours * (capacityAh / (currentA * ratedHours)) ** exponent : Number.POSITIVE_INFINITY;
}

/**
 * What share of the battery does an hour at this current take? Peukert at rated hours above the rated current; below it amperes over capacity, since
 * no battery is counted on for more than its mark (common practice, no source). Never falls when the current or the exponent rises or the capacity falls.
 */
export function chargeLostPerHour({ capacityAh, ratedHours, exponent }: RatedBattery, currentA: number): number {
  if (!(currentA > 0)) return 0;
  const over = (currentA * ratedHours) / capacityAh;
  return (currentA / capacityAh) * Math.max(1, over ** (exponent - 1));
}

/** The same battery's capacity at another number of rated hours, by the same law, Ah. */
export const capacityAtHoursAh = ({ capacityAh, ratedHours, exponent }: RatedBattery, hours: number): number =>
  capacityAh * (hours / ratedHours) ** (1 - 1 / exponent);
