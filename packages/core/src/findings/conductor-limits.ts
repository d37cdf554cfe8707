import { ampacityOf, deviceCeilingOf } from "../protection/index.js";
import { known, type Outcome } from "../quantity/index.js";
import type { Cable, FullPolicy, WireRun } from "../record/index.js";
import type { ConductorLimit } from "./context.js";

type ZoneOf = (place: string) => string | undefined;

/** What this conductor may carry, with every table and factor that it rests on. */
export function ampacityLimit(run: WireRun | Cable, policy: FullPolicy, zoneOf: ZoneOf): Outcome<ConductorLimit> {
  const found = ampacityOf(run, policy, "", zoneOf);
  if (found.kind !== "known") return found;
  const { ampacityA, span, source, factors, wouldSettle } = found.value;
  return known({ valueA: ampacityA, span, source, alsoRestsOn: factors.map((factor) => factor.source), wouldSettle });
}

/** The largest device for this conductor, with every table and factor that it rests on. */
export function ceilingLimit(run: WireRun | Cable, policy: FullPolicy, zoneOf: ZoneOf): Outcome<ConductorLimit> {
  const found = deviceCeilingOf(run, policy, "", zoneOf);
  if (found.kind !== "known") return found;
  const { maxA, span, source, because, wouldSettle } = found.value;
  // A small conductor's device is named by the clause itself, whatever the ampacity.
  const ampacity = because === "small-conductor" ? undefined : ampacityLimit(run, policy, zoneOf);
  const alsoRestsOn = ampacity?.kind === "known" ? [ampacity.value.source, ...ampacity.value.alsoRestsOn] : [];
  return known({ valueA: maxA, span, source, alsoRestsOn, wouldSettle });
}
