import { figureValue, type Span, spanOf } from "../quantity/index.js";
import type { CoachIndex, SupplyId } from "../record/index.js";

/** The sun of one solar supply: all of a day's sun gathered around noon at its rated amperes. */
export interface Sun {
  readonly supply: SupplyId;
  readonly currentA: number;
  readonly hoursPerDay: number;
  readonly mostA: number;
  readonly mostHours: number;
}

/**
 * What may solar give a day? `ratedA` for `sunHoursPerDay`, as the record states them; a solar supply without both gives nothing and its missing fields are
 * named. The network leaves the sun out, and so does the worst case here: it counts only where it is asked for.
 */
export function sunOf(index: CoachIndex, ids: ReadonlySet<string>): { readonly suns: Sun[]; readonly needs: string[] } {
  const suns: Sun[] = [];
  const needs: string[] = [];
  for (const supply of index.supplies.values()) {
    if (supply.kind !== "solar" || !ids.has(supply.id)) continue;
    const path = index.pathOf("supplies", supply.id);
    if (supply.ratedA === undefined) needs.push(`${path}.ratedA`);
    if (supply.sunHoursPerDay === undefined) needs.push(`${path}.sunHoursPerDay`);
    if (supply.ratedA === undefined || supply.sunHoursPerDay === undefined) continue;
    const [amps, hours]: [Span, Span] = [spanOf(supply.ratedA, "rating"), spanOf(supply.sunHoursPerDay, "time")];
    const within = (h: number) => Math.min(24, Math.max(0, h));
    suns.push({
      supply: supply.id,
      currentA: Math.max(0, figureValue(supply.ratedA)),
      hoursPerDay: within(figureValue(supply.sunHoursPerDay)),
      mostA: Math.max(0, amps.hi),
      mostHours: within(hours.hi),
    });
  }
  return { suns, needs };
}

/** A stretch of hours by the clock in which the sun gives this much. */
export interface SunWindow {
  readonly fromHour: number;
  readonly toHour: number;
  readonly currentA: number;
}

const aroundNoon = (hours: number, currentA: number): SunWindow => ({
  fromHour: 12 - hours / 2,
  toHour: 12 + hours / 2,
  currentA,
});

export const sunWindows = (suns: readonly Sun[]): SunWindow[] =>
  suns.map((sun) => aroundNoon(sun.hoursPerDay, sun.currentA));
/** The most the sun may give. */
export const mostSunWindows = (suns: readonly Sun[]): SunWindow[] =>
  suns.map((sun) => aroundNoon(sun.mostHours, sun.mostA));
