import type { LoadProfile } from "../record/index.js";
import type { SunWindow } from "./sun.js";

/** A stretch of time in which nothing is switched and the sun is steady. */
export interface Stretch {
  readonly fromH: number;
  readonly hours: number;
  /** Which span of the profile. */
  readonly span: number;
  readonly sunA: number;
}

const CLOSE_H = 1e-9;

/** The profile's spans one after the other, begun again when they are over, cut where the sun comes and goes, up to the horizon. */
export function* stretches(profile: LoadProfile, windows: readonly SunWindow[], horizonH: number): Iterable<Stretch> {
  const start = profile.startsAtHour ?? 0;
  const edges = [...new Set(windows.flatMap((w) => [w.fromHour, w.toHour]))].sort((a, b) => a - b);
  const sunAt = (clock: number): number =>
    windows.reduce((sum, w) => sum + (clock >= w.fromHour - CLOSE_H && clock < w.toHour - CLOSE_H ? w.currentA : 0), 0);
  let atH = 0;
  for (let n = 0; atH < horizonH - CLOSE_H; n = (n + 1) % profile.spans.length) {
    const endH = Math.min(horizonH, atH + profile.spans[n]!.hours);
    while (atH < endH - CLOSE_H) {
      const clock = (start + atH) % 24;
      const next =
        edges.find((edge) => edge > clock + CLOSE_H) ?? (edges.length > 0 ? 24 + edges[0]! : Number.POSITIVE_INFINITY);
      const hours = Math.min(endH - atH, next - clock);
      yield { fromH: atH, hours, span: n, sunA: sunAt(clock) };
      atH += hours;
    }
  }
}
