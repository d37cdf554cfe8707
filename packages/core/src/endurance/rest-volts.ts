import { buildCoach } from "../network/index.js";
import { Invariant } from "../quantity/index.js";
import type { CoachIndex } from "../record/index.js";

/** Volts at rest of every battery of the coach by its charge, as the network has them; each charge looked up once. */
export class RestVolts {
  private readonly found = new Map<
    number,
    ReadonlyMap<string, { readonly emfV: number; readonly loV: number; readonly hiV: number }>
  >();

  constructor(private readonly index: CoachIndex) {}

  /** By supply id. Throws `Invariant` where the coach cannot be built: it was built before. */
  at(chargeRatio: number): ReadonlyMap<string, { readonly emfV: number; readonly loV: number; readonly hiV: number }> {
    const kept = this.found.get(chargeRatio);
    if (kept !== undefined) return kept;
    const built = buildCoach(this.index, { name: "at rest", on: new Set(), chargeRatio });
    if (built.kind !== "known") throw new Invariant("rest-volts", "a coach that was built cannot be built again");
    const made = new Map<string, { emfV: number; loV: number; hiV: number }>();
    for (const { supply, branch } of built.value.supplies) {
      const emfV = built.value.network.branches[branch]?.emfV;
      const span = built.value.emfSpan[branch];
      if (emfV !== undefined) made.set(supply.id, { emfV, loV: span?.lo ?? emfV, hiV: span?.hi ?? emfV });
    }
    this.found.set(chargeRatio, made);
    return made;
  }
}
