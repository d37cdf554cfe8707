import { chargeRatePerHour, type Drained } from "./drain.js";
import type { DrawTable } from "./draw-table.js";
import type { Stretch } from "./timeline.js";

/** The state of charge at one time of a run. */
export interface ChargePoint {
  readonly timeH: number;
  readonly chargeRatio: number;
  /** Mean current out of the battery, A, and mean volts at its terminals. */
  readonly currentA: number;
  readonly terminalV: number;
  readonly span: number;
}

export type RunEnd = "reserve" | "horizon" | "loads-out";

export interface NominalRun {
  readonly hours: number;
  readonly ends: RunEnd;
  readonly because?: string;
  readonly points: readonly ChargePoint[];
  /** Ampere-hours out of the battery less those put in, self-discharge not counted. */
  readonly outAh: number;
  /** By drawer of each span's table: hours on, ampere-hours and watt-hours, all by the mean. */
  readonly drawnAh: ReadonlyMap<string, number>;
  readonly drawnWh: ReadonlyMap<string, number>;
}

export interface RunInputs {
  readonly group: number;
  readonly tables: readonly DrawTable[];
  /** Steady draws outside the network by span, A. */
  readonly standingA: readonly number[];
  readonly battery: Drained;
  readonly startRatio: number;
  readonly reserveRatio: number;
  readonly horizonH: number;
}

/** A step changes the charge by no more than this. */
const STEP_RATIO = 0.01;
const POINT_RATIO = 0.004;
const MOST_POINTS = 3000;
const CLOSE_H = 1e-12;

/** One bank's charge over time, by Runge and Kutta's fourth-order step over the table of solved currents, until the reserve, the horizon or the loads go out. */
export function nominalRun(inputs: RunInputs, timeline: Iterable<Stretch>): NominalRun {
  const { group, tables, standingA, battery, reserveRatio, horizonH } = inputs;
  const points: ChargePoint[] = [];
  const drawn = tables.map((table) => table.network.drawers.map(() => ({ ah: 0, wh: 0 })));
  let s = inputs.startRatio;
  let outAh = 0;
  const currentA = (stretch: Stretch, at: number): number =>
    (tables[stretch.span]!.at(at)?.groupA[group] ?? 0) + standingA[stretch.span]! - stretch.sunA;
  const rate = (stretch: Stretch, at: number): number => chargeRatePerHour(battery, currentA(stretch, at), at);
  const stepped = (stretch: Stretch, from: number, h: number): number => {
    const k1 = rate(stretch, from);
    const k2 = rate(stretch, from + (h / 2) * k1);
    const k3 = rate(stretch, from + (h / 2) * k2);
    const k4 = rate(stretch, from + h * k3);
    return Math.min(1, from + (h / 6) * (k1 + 2 * k2 + 2 * k3 + k4));
  };
  const put = (timeH: number, stretch: Stretch): void => {
    const terminalV = tables[stretch.span]!.at(s)?.groupV[group];
    if (terminalV !== undefined)
      points.push({ timeH, chargeRatio: s, currentA: currentA(stretch, s), terminalV, span: stretch.span });
  };
  /** Below this charge the run is over: the reserve, or where the loads of this span cannot run any more. */
  const floorOf = (stretch: Stretch): number => Math.max(reserveRatio, tables[stretch.span]!.stopsAt?.chargeRatio ?? 0);
  const tally = (stretch: Stretch, middle: number, h: number): void => {
    const found = tables[stretch.span]!.at(middle);
    if (found === undefined) return;
    const { drawerA, drawerV } = found;
    drawn[stretch.span]!.forEach((sum, i) => {
      const ah = drawerA[i]! * h;
      sum.ah += ah;
      sum.wh += ah * drawerV[i]!;
    });
  };
  /** Of all spans together, by drawer. */
  const summed = (part: "ah" | "wh"): Map<string, number> => {
    const sums = new Map<string, number>();
    tables.forEach((table, span) => {
      table.network.drawers.forEach(({ kind, id }, i) => {
        const key = `${kind}/${id}`;
        const more = drawn[span]![i]![part];
        if (more !== 0 || sums.has(key)) sums.set(key, (sums.get(key) ?? 0) + more);
      });
    });
    return sums;
  };
  const done = (hours: number, stretch: Stretch | undefined): NominalRun => {
    const stops = stretch === undefined ? undefined : tables[stretch.span]!.stopsAt;
    const isOut = stops !== undefined && s <= stops.chargeRatio && stops.chargeRatio > reserveRatio;
    return {
      hours,
      ends: isOut ? "loads-out" : s <= reserveRatio ? "reserve" : "horizon",
      ...(isOut ? { because: stops.because } : {}),
      points,
      outAh,
      drawnAh: summed("ah"),
      drawnWh: summed("wh"),
    };
  };
  let last: Stretch | undefined;
  for (const stretch of timeline) {
    const isNew = last === undefined || last.span !== stretch.span || last.sunA !== stretch.sunA;
    if (isNew && points.length < MOST_POINTS) {
      // Where something is switched the current jumps: one point before, one after.
      if (last !== undefined) put(stretch.fromH, last);
      put(stretch.fromH, stretch);
    }
    last = stretch;
    rate(stretch, s);
    if (s <= floorOf(stretch)) return done(stretch.fromH, stretch);
    let at = 0;
    while (at < stretch.hours - CLOSE_H) {
      const speed = Math.abs(rate(stretch, s));
      let h = Math.min(stretch.hours - at, speed > 0 ? STEP_RATIO / speed : Number.POSITIVE_INFINITY);
      let to = stepped(stretch, s, h);
      const floor = floorOf(stretch);
      const isLast = to <= floor;
      if (isLast) {
        let shortH = 0;
        for (let n = 0; n < 50; n++) {
          const middleH = (shortH + h) / 2;
          if (stepped(stretch, s, middleH) > floor) shortH = middleH;
          else h = middleH;
        }
        to = floor;
      }
      outAh += (h / 6) * (currentA(stretch, s) + 4 * currentA(stretch, (s + to) / 2) + currentA(stretch, to));
      tally(stretch, (s + to) / 2, h);
      s = to;
      at += h;
      if (isLast || Math.abs(s - (points.at(-1)?.chargeRatio ?? 2)) >= POINT_RATIO) put(stretch.fromH + at, stretch);
      if (isLast) return done(stretch.fromH + at, stretch);
    }
  }
  if (last !== undefined) put(horizonH, last);
  return done(horizonH, undefined);
}
