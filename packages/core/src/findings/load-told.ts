import type { CoachSpans } from "../network/index.js";
import { known } from "../quantity/index.js";
import type { Circuit, Load } from "../record/index.js";
import type { Limit } from "./against.js";
import type { CoachContext } from "./context.js";
import { type Reading, type Told, toldIn, worstState } from "./state-told.js";

/** How many moving loads are asked again one by one; the others stay judged with everything on, which their words say. */
const ASKED_AGAIN_AT_MOST = 24;
const askedAgain = new WeakMap<CoachContext, number>();

/**
 * A load's volts or drop in the two named states. With everything on, moving loads run together that never do: where that does not hold, such a load
 * is asked again (`isAskedAgain`) beside the busy evening's lights alone.
 */
export function loadTold(
  context: CoachContext,
  load: Load,
  circuit: Circuit,
  of: "onV" | "dropV",
  limit: Limit,
  isAskedAgain: boolean,
): Told | undefined {
  const readingOf = (spans: CoachSpans): Reading => {
    const found = spans.loads.get(load.id);
    return { spanned: found?.kind === "known" ? known(found.value[of]) : undefined };
  };
  const told = worstState(context, readingOf, limit);
  const busy = context.busyState();
  if (told === undefined || told.verdict === "holds" || !isAskedAgain || busy.on.has(circuit.id)) return told;
  const asked = askedAgain.get(context) ?? 0;
  if (asked >= ASKED_AGAIN_AT_MOST) return told;
  askedAgain.set(context, asked + 1);
  const state = { ...busy, on: new Set([...busy.on, circuit.id]), name: `${busy.name} and ${load.name}` };
  const spans = context.inState(state);
  const beside = spans.kind === "known" ? toldIn(spans.value, readingOf(spans.value), limit) : undefined;
  if (beside === undefined || beside.verdict === "holds") return told;
  return { ...beside, severity: "mend" };
}
