/** What one drawer took until the end: mean over the whole time, and in all. */
export interface EnergyOf {
  readonly kind: "load" | "module" | "network" | "standby" | "self-discharge";
  readonly id: string;
  readonly name: string;
  /** Over the whole run. */
  readonly meanA: number;
  /** What the profile once through takes, at the charge at the start: the same for runs of any length, so that two can be compared. */
  readonly onceAh: number;
  readonly ampHours: number;
  readonly wattHours: number;
  /** Part of everything taken. */
  readonly shareRatio: number;
}

/** Each one's part of everything, the greatest first. */
export function sharesOf(all: readonly Omit<EnergyOf, "shareRatio">[]): EnergyOf[] {
  const total = all.reduce((sum, one) => sum + one.ampHours, 0);
  return all
    .map((one) => ({ ...one, shareRatio: total > 0 ? one.ampHours / total : 0 }))
    .sort((a, b) => b.ampHours - a.ampHours);
}
