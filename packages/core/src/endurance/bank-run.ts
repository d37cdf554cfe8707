import { known, type Outcome, refused, type Span } from "../quantity/index.js";
import type { SupplyId } from "../record/index.js";
import type { BankGroup } from "./bank-groups.js";
import type { Spread } from "./battery-figures.js";
import { type BoundPoint, boundRun } from "./bound-run.js";
import type { Drained } from "./drain.js";
import type { EnergyOf } from "./energy.js";
import { type ChargePoint, type NominalRun, nominalRun, type RunEnd } from "./nominal-run.js";
import type { PreparedProfile } from "./prepare-profile.js";
import type { StandingDraw } from "./standing.js";
import { mostSunWindows, sunOf, sunWindows } from "./sun.js";
import { stretches } from "./timeline.js";

/** How one group of joined banks fares. */
export interface BankRun {
  readonly supplies: readonly SupplyId[];
  readonly name: string;
  readonly capacityAh: Spread;
  readonly ratedHours: number;
  readonly exponent: Spread;
  /** Share of the capacity that the cold leaves. */
  readonly coldShare: Spread;
  readonly temperatureC: Spread;
  readonly chargeAtStart: Spread;
  readonly hours: { readonly nominal: number; readonly span: Span };
  readonly ends: RunEnd;
  readonly because?: string;
  readonly points: readonly ChargePoint[];
  /** The charge is certainly above `least` and below `most`; empty where no spans were asked for. */
  readonly least: readonly BoundPoint[];
  readonly most: readonly BoundPoint[];
  /** Ampere-hours out, less those put in, the loss at rest not counted. */
  readonly outAh: number;
  readonly energy: readonly Omit<EnergyOf, "shareRatio">[];
  readonly sunCounted: readonly SupplyId[];
  readonly sunNeeds: readonly string[];
}

export interface BankRunOptions {
  readonly reserveRatio: number;
  readonly horizonH: number;
  readonly countSun: boolean;
  readonly spans: "fine" | "coarse" | "none";
}

type End = "nominal" | "least" | "most";

/** The group as one battery: as it is taken, at its worst or at its best. */
export function drainedOf(group: BankGroup, end: End): Drained {
  const [poor, rich]: [(of: Spread) => number, (of: Spread) => number] =
    end === "nominal"
      ? [(of) => of.value, (of) => of.value]
      : end === "least"
        ? [(of) => of.span.lo, (of) => of.span.hi]
        : [(of) => of.span.hi, (of) => of.span.lo];
  return {
    capacityAh: poor(group.capacityAh) * poor(group.coldShare),
    ratedHours: group.ratedHours,
    exponent: rich(group.exponent),
    selfPerHour: rich(group.selfPerHour),
    chargeBack: poor(group.chargeBack),
    tapers: end !== "most",
  };
}

/** Runs one group of banks through the profile, at the figures as they are taken and at both ends of what they may be. */
export function runBank(prepared: PreparedProfile, group: number, options: BankRunOptions): Outcome<BankRun> {
  const of = prepared.groups[group]!;
  const { reserveRatio, horizonH } = options;
  const sun = options.countSun ? sunOf(prepared.index, of.helpers) : { suns: [], needs: [] };
  const isOwn = (draw: StandingDraw): boolean =>
    draw.circuit === undefined ? group === 0 : of.circuits.has(draw.circuit);
  const standingA = (end: End): number[] =>
    prepared.standing.map((draws) =>
      draws
        .filter(isOwn)
        .reduce(
          (sum, draw) => sum + (end === "nominal" ? draw.currentA : end === "least" ? draw.span.hi : draw.span.lo),
          0,
        ),
    );
  const run = nominalRun(
    {
      group,
      tables: prepared.tables,
      standingA: standingA("nominal"),
      battery: drainedOf(of, "nominal"),
      startRatio: of.charge.value,
      reserveRatio,
      horizonH,
    },
    stretches(prepared.profile, sunWindows(sun.suns), horizonH),
  );
  if (run.ends === "loads-out" && run.hours === 0) return refused("no-operating-point", run.because ?? "");
  const bound = (end: "least" | "most") =>
    boundRun(
      {
        end,
        group,
        bounds: prepared.bounds,
        standingA: standingA(end),
        battery: drainedOf(of, end),
        bends: prepared.bends,
        isCoarse: options.spans === "coarse",
        startRatio: end === "least" ? of.charge.span.lo : of.charge.span.hi,
        reserveRatio,
        horizonH,
      },
      stretches(prepared.profile, end === "most" ? mostSunWindows(sun.suns) : [], horizonH),
    );
  const [least, most] = options.spans !== "none" ? [bound("least"), bound("most")] : [undefined, undefined];
  return known({
    supplies: of.supplies,
    name: of.name,
    capacityAh: of.capacityAh,
    ratedHours: of.ratedHours,
    exponent: of.exponent,
    coldShare: of.coldShare,
    temperatureC: of.temperatureC,
    chargeAtStart: of.charge,
    hours: {
      nominal: run.hours,
      // Where the loads go out before the reserve, the least may be reached sooner than the bound says.
      span: {
        lo: least === undefined ? run.hours : Math.min(least.hours, run.hours),
        hi: most === undefined ? run.hours : Math.max(most.hours, run.hours),
      },
    },
    ends: run.ends,
    ...(run.because === undefined ? {} : { because: run.because }),
    points: run.points,
    least: least?.points ?? [],
    most: most?.points ?? [],
    outAh: run.outAh,
    energy: energyOf(prepared, group, run),
    sunCounted: sun.suns.map((one) => one.supply),
    sunNeeds: sun.needs,
  });
}

function energyOf(prepared: PreparedProfile, group: number, run: NominalRun): Omit<EnergyOf, "shareRatio">[] {
  const of = prepared.groups[group]!;
  const { index } = prepared;
  const found: Omit<EnergyOf, "shareRatio">[] = [];
  const once = onceThrough(prepared, of.charge.value);
  const onceH = prepared.profile.spans.reduce((sum, span) => sum + span.hours, 0);
  const meanOver = (ampHours: number) => (run.hours > 0 ? ampHours / run.hours : 0);
  for (const [key, ampHours] of run.drawnAh) {
    const [kind, id] = key.split("/", 2) as ["load" | "module", string];
    const isOwn =
      kind === "load" ? of.circuits.has(index.circuitOfLoad.get(id)?.id as never) : of.modules.has(id as never);
    if (!isOwn) continue;
    const name = (kind === "load" ? index.loads.get(id)?.name : index.modules.get(id)?.name) ?? id;
    found.push({
      kind,
      id,
      name,
      meanA: meanOver(ampHours),
      onceAh: once.get(key) ?? 0,
      ampHours,
      wattHours: run.drawnWh.get(key) ?? 0,
    });
  }
  const meanV = run.points.reduce((sum, point) => sum + point.terminalV, 0) / Math.max(1, run.points.length);
  const hoursOf = spanHours(prepared, run.hours);
  const standing = new Map<string, Omit<EnergyOf, "shareRatio">>();
  prepared.standing.forEach((draws, span) => {
    for (const draw of draws) {
      if (draw.circuit === undefined ? group !== 0 : !of.circuits.has(draw.circuit)) continue;
      const was = standing.get(`${draw.kind}/${draw.id}`);
      const ampHours = draw.currentA * hoursOf[span]! + (was?.ampHours ?? 0);
      const onceAh = draw.currentA * prepared.profile.spans[span]!.hours + (was?.onceAh ?? 0);
      const { kind, id, name } = draw;
      const wattHours = ampHours * meanV;
      standing.set(`${kind}/${id}`, { kind, id, name, meanA: meanOver(ampHours), onceAh, ampHours, wattHours });
    }
  });
  const lostA = drainedOf(of, "nominal").selfPerHour * of.capacityAh.value * of.coldShare.value;
  const lostAh = lostA * run.hours;
  found.push(...standing.values(), {
    kind: "self-discharge",
    id: of.supplies[0]!,
    name: `${of.name}, loss at rest`,
    meanA: meanOver(lostAh),
    onceAh: lostA * onceH,
    ampHours: lostAh,
    wattHours: lostAh * meanV,
  });
  return found;
}

/** Ampere-hours of each drawer over the profile once, all of it at one charge. */
function onceThrough({ profile, tables }: PreparedProfile, chargeRatio: number): Map<string, number> {
  const once = new Map<string, number>();
  for (const [span, table] of tables.entries()) {
    const found = table.at(chargeRatio);
    if (found === undefined) continue;
    for (const [i, { kind, id }] of table.network.drawers.entries()) {
      const key = `${kind}/${id}`;
      once.set(key, (once.get(key) ?? 0) + found.drawerA[i]! * profile.spans[span]!.hours);
    }
  }
  return once;
}

/** How long each span of the profile was on, in a run of so many hours. */
function spanHours({ profile }: PreparedProfile, hours: number): number[] {
  const on = profile.spans.map(() => 0);
  for (const stretch of stretches(profile, [], hours)) on[stretch.span]! += stretch.hours;
  return on;
}
