import { known, missing, type Outcome, refused, type Source, type Span } from "../quantity/index.js";
import { type CoachIndex, type LoadProfile, policyOf, type SupplyId } from "../record/index.js";
import { type BankGroup, bankGroups } from "./bank-groups.js";
import { type BankRun, runBank } from "./bank-run.js";
import type { EnduranceAssumed } from "./battery-figures.js";
import { CLASS_BATTERY } from "./class-battery.js";
import { type EnergyOf, sharesOf } from "./energy.js";
import { prepareProfile } from "./prepare-profile.js";
import { profileFor } from "./profile-faults.js";
import type { ProfileId } from "./profiles.js";

export interface EnduranceOptions {
  /** Charge to be kept, 0..1; the policy's where absent, else half for lead and a fifth for lithium (common practice). */
  readonly reserveRatio?: number | undefined;
  /** How full the batteries are to begin with, 0..1; as the record says where absent. */
  readonly chargeRatio?: number | undefined;
  /** Temperature of the batteries, C; as the record says where absent. */
  readonly batteryC?: number | undefined;
  /** Count the sun as the record states it; left out where absent. */
  readonly countSun?: boolean | undefined;
  /** How far to look, hours; a year where absent. */
  readonly horizonH?: number | undefined;
  /** `coarse`: wider and sooner; `none`: nominal figures only. `fine` where absent. All but `none` are guaranteed. */
  readonly spans?: "fine" | "coarse" | "none" | undefined;
}

/** How long the batteries last. */
export interface Endurance {
  readonly profile: LoadProfile;
  readonly reserveRatio: number;
  readonly reserveSource: Source;
  /** Of the bank that is down first. */
  readonly hours: { readonly nominal: number; readonly span: Span; readonly method: "enclosure" | "nominal-only" };
  readonly ends: BankRun["ends"];
  readonly because?: string;
  /** Does it last the profile once through: over the whole span, not at all, or it depends? */
  readonly lastsOnce: "holds" | "fails" | "open";
  readonly profileHours: number;
  /** The bank that is down first comes first. */
  readonly banks: readonly BankRun[];
  readonly energy: readonly EnergyOf[];
  readonly sunCounted: readonly SupplyId[];
  readonly horizonH: number;
  readonly assumed: readonly EnduranceAssumed[];
  /** Fields for want of which something is not in the nominal figure (the span covers what it may draw). */
  readonly leftOut: readonly string[];
  /** Circuits dimmed in some span, with the duty. */
  readonly dimmed: ReadonlyMap<string, number>;
  readonly solves: number;
}

export const YEAR_H = 8760;

/**
 * How many hours do the batteries last, used as in this profile? Steps the state of charge over the network solved at it: mean currents, Peukert at rated
 * hours, the cold, the loss at rest. `hours.span` is guaranteed over the record's figures (not over the profile, which is a habit). Missing: batteries or
 * their capacity. Refused, naming place and remedy: a profile that is empty or names what is not there, a reserve or charge outside 0..1, figures that no
 * battery has, loads that cannot all run even at the start (`no-operating-point`).
 */
export function enduranceOf(
  index: CoachIndex,
  asked: ProfileId | string | LoadProfile,
  options: EnduranceOptions = {},
): Outcome<Endurance> {
  const profile = profileFor(index, asked);
  if (profile.kind !== "known") return profile;
  const groups = bankGroups(index, options);
  if (groups.kind !== "known") return groups;
  const reserve = reserveOf(index, groups.value, options.reserveRatio);
  if (reserve.kind !== "known") return reserve;
  const horizonH = options.horizonH ?? YEAR_H;
  if (!(horizonH > 0)) return refused("horizon-wrong", `the horizon: wanted more than 0 hours, got ${horizonH}`);
  const prepared = prepareProfile(index, profile.value, groups.value);
  if (prepared.kind !== "known") return prepared;
  const runs: BankRun[] = [];
  for (let group = 0; group < groups.value.length; group++) {
    const run = runBank(prepared.value, group, {
      reserveRatio: reserve.value.ratio,
      horizonH,
      countSun: options.countSun === true,
      spans: options.spans ?? "fine",
    });
    if (run.kind !== "known") return run;
    runs.push(run.value);
  }
  const banks = [...runs].sort((a, b) => a.hours.nominal - b.hours.nominal);
  const first = banks[0];
  if (first === undefined) return missing("supplies");
  const span = {
    lo: Math.min(...banks.map((bank) => bank.hours.span.lo)),
    hi: Math.min(...banks.map((bank) => bank.hours.span.hi)),
  };
  const profileHours = profile.value.spans.reduce((sum, one) => sum + one.hours, 0);
  return known({
    profile: profile.value,
    reserveRatio: reserve.value.ratio,
    reserveSource: reserve.value.source,
    hours: { nominal: first.hours.nominal, span, method: options.spans === "none" ? "nominal-only" : "enclosure" },
    ends: first.ends,
    ...(first.because === undefined ? {} : { because: first.because }),
    lastsOnce: span.lo >= profileHours ? "holds" : span.hi < profileHours ? "fails" : "open",
    profileHours,
    banks,
    energy: sharesOf(banks.flatMap((bank) => bank.energy)),
    sunCounted: banks.flatMap((bank) => bank.sunCounted),
    horizonH,
    assumed: distinct([...groups.value.flatMap((group) => group.assumed), ...prepared.value.assumed]),
    leftOut: [...new Set([...prepared.value.leftOut, ...banks.flatMap((bank) => bank.sunNeeds)])].sort(),
    dimmed: prepared.value.dimmed,
    solves: prepared.value.tables.reduce((sum, table) => sum + table.solves, 0),
  });
}

const RESERVE_POLICY: Source = { id: "record-policy", name: "the record's own policy", how: "practice" };
const RESERVE_ASKED: Source = { id: "asked", name: "as asked", how: "practice" };

function reserveOf(
  index: CoachIndex,
  groups: readonly BankGroup[],
  asked: number | undefined,
): Outcome<{ ratio: number; source: Source }> {
  const stated = policyOf(index.record).reserveRatio;
  const [ratio, source, place] =
    asked !== undefined
      ? [asked, RESERVE_ASKED, "the reserve asked for"]
      : stated !== undefined
        ? [stated, RESERVE_POLICY, "policy.reserveRatio"]
        : [undefined, undefined, ""];
  if (ratio === undefined || source === undefined) {
    // Of unlike banks the one that needs most kept back decides.
    const own = groups.map((group) => CLASS_BATTERY.reserve[group.banks[0]!.family]);
    const most = own.reduce((a, b) => (b.value > a.value ? b : a));
    return known({ ratio: most.value, source: most.source });
  }
  return ratio >= 0 && ratio <= 1
    ? known({ ratio, source })
    : refused("reserve-out-of-range", `${place}: wanted 0 to 1, got ${ratio}; half is written 0.5`);
}

const distinct = (all: readonly EnduranceAssumed[]): EnduranceAssumed[] => {
  const byKey = new Map<string, EnduranceAssumed>();
  for (const one of all) if (!byKey.has(`${one.path} ${one.why}`)) byKey.set(`${one.path} ${one.why}`, one);
  return [...byKey.values()];
};
