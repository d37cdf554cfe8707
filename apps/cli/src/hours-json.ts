import type { Endurance, Parasitic } from "@fusebook/core/endurance";
import type { Outcome } from "@fusebook/core/quantity";

/** No end is written as null. */
const finite = (hours: number): number | null => (Number.isFinite(hours) ? hours : null);

/** A run with its maps as plain objects, or why there is none. */
export const enduranceJson = (outcome: Outcome<Endurance>) =>
  outcome.kind === "known"
    ? { kind: "known", value: { ...outcome.value, dimmed: Object.fromEntries(outcome.value.dimmed) } }
    : outcome;

export function parasiticJson(outcome: Outcome<Parasitic>) {
  if (outcome.kind !== "known") return outcome;
  const flat = ({ nominal, span }: Parasitic["hoursToFlat"]) => ({
    nominal: finite(nominal),
    span: { lo: finite(span.lo), hi: finite(span.hi) },
  });
  const { hoursToFlat, banks } = outcome.value;
  return {
    kind: "known",
    value: {
      ...outcome.value,
      hoursToFlat: flat(hoursToFlat),
      banks: banks.map((bank) => ({ ...bank, hoursToFlat: flat(bank.hoursToFlat) })),
    },
  };
}
