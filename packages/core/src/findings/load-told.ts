import { type CoachSpans, MOVING_CLASSES } from "../network/index.js";
import { known } from "../quantity/index.js";
import type { Circuit, Load } from "../record/index.js";
import type { Limit } from "./against.js";
import type { CoachContext } from "./context.js";
import { loadsOf } from "./leans.js";
import { type Reading, type Told, toldIn, worstState } from "./state-told.js";

/** Does everything on this circuit turn or push something? */
const movesOnly = (context: CoachContext, circuit: Circuit | undefined): boolean =>
  circuit !== undefined &&
  (circuit.loads ?? []).length > 0 &&
  loadsOf(context, circuit).every((load) => load.class !== undefined && MOVING_CLASSES.has(load.class));

/** How many moving loads are asked again one by one; the others stay judged with everything on, which their words say. */
const ASKED_AGAIN_AT_MOST = 24;
const askedAgain = new WeakMap<CoachContext, number>();

/**
 * A load's volts or drop in the two named states. With everything on, moving loads run together that never do: where that does not hold, such a load
 * is asked again (`isAskedAgain`) as the one that runs in a busy evening.
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
  const lights = [...busy.on].filter((id) => !movesOnly(context, context.index.circuits.get(id)));
  const state = { ...busy, on: new Set([...lights, circuit.id]), name: `busy evening with ${load.name}` };
  const spans = context.inState(state);
  const beside = spans.kind === "known" ? toldIn(spans.value, readingOf(spans.value), limit) : undefined;
  if (beside === undefined || beside.verdict === "holds") return told;
  return { ...beside, severity: "mend" };
}
