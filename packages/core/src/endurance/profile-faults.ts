import { known, type Outcome, refused } from "../quantity/index.js";
import type { CoachIndex, LoadProfile } from "../record/index.js";
import { loadProfile } from "../record/index.js";
import { PROFILES, type ProfileId } from "./profiles.js";

const isRatio = (value: number): boolean => value >= 0 && value <= 1;

/** What is wrong with a profile for this coach, if anything: where, what is wanted, what to do. */
export function profileFault(
  index: CoachIndex,
  profile: LoadProfile,
  place = `profile ${profile.id}`,
): { code: string; because: string } | undefined {
  const fault = (code: string, because: string) => ({ code, because });
  if (profile.spans.length === 0)
    return fault(
      "profile-empty",
      `${place}.spans: wanted one span of hours or more, got none; say for how long what is on`,
    );
  const start = profile.startsAtHour;
  if (start !== undefined && !(start >= 0 && start <= 24))
    return fault("profile-hours-wrong", `${place}.startsAtHour: wanted 0 to 24 by the clock, got ${start}`);
  for (const [s, span] of profile.spans.entries()) {
    const at = `${place}.spans[${s}]`;
    if (!(span.hours > 0 && Number.isFinite(span.hours)))
      return fault(
        "profile-hours-wrong",
        `${at}.hours: wanted more than 0 hours, got ${span.hours}; take the span out or say how long it lasts`,
      );
    for (const [n, item] of span.on.entries()) {
      const here = `${at}.on[${n}]`;
      for (const name of ["shareRatio", "dutyRatio"] as const) {
        const ratio = item[name];
        if (ratio !== undefined && !isRatio(ratio))
          return fault("profile-ratio-wrong", `${here}.${name}: wanted 0 to 1, got ${ratio}; a half is written 0.5`);
      }
      for (const [i, id] of (item.circuits ?? []).entries())
        if (!index.circuits.has(id))
          return fault(
            "profile-circuit-unknown",
            `${here}.circuits[${i}]: the coach has no circuit ${id}; take it out or write the circuit down`,
          );
      for (const [i, id] of (item.loads ?? []).entries())
        if (!index.circuitOfLoad.has(id))
          return fault(
            "profile-load-unknown",
            `${here}.loads[${i}]: the coach has no load ${id} on any circuit; take it out or write the load down`,
          );
    }
  }
  return undefined;
}

/** The profiles of this coach: the common ones, each replaced by the record's own of the same id, then the record's others. */
export function profilesOf(index: CoachIndex): ReadonlyMap<string, LoadProfile> {
  const all = new Map<string, LoadProfile>(Object.entries(PROFILES));
  for (const profile of index.record.endurance?.profiles ?? []) all.set(profile.id, profile);
  return all;
}

/** A profile by its id, or one given; checked against this coach. */
export function profileFor(index: CoachIndex, asked: ProfileId | string | LoadProfile): Outcome<LoadProfile> {
  const all = profilesOf(index);
  const profile = typeof asked === "string" ? all.get(asked) : asked;
  if (profile === undefined)
    return refused(
      "profile-unknown",
      `there is no profile "${String(asked)}"; there are ${[...all.keys()].join(", ")}`,
    );
  const own = index.record.endurance?.profiles?.indexOf(profile) ?? -1;
  const fault = profileFault(index, profile, own >= 0 ? `endurance.profiles[${own}]` : undefined);
  return fault === undefined ? known(profile) : refused(fault.code, fault.because);
}

/** A profile from a file. Refused with every fault by path where it is not one. */
export function readProfile(value: unknown): Outcome<LoadProfile> {
  const read = loadProfile.safeParse(value);
  if (read.success) return known(read.data as LoadProfile);
  if (typeof value !== "object" || value === null || Array.isArray(value))
    return refused(
      "profile-unreadable",
      'wanted an object such as { "id": "mine", "spans": [{ "hours": 5, "on": [] }] }',
    );
  const faults = read.error.issues.map(
    (issue) => `${issue.path.join(".") || "the document"}: ${issue.message}; correct it, or take it out`,
  );
  return refused("profile-unreadable", faults.join("; "));
}
