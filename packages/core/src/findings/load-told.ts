import type { SpannedLoad } from "../network/index.js";
import type { Circuit, Load } from "../record/index.js";
import type { Limit } from "./against.js";
import type { CoachContext } from "./context.js";
import { type Told, toldIn, worstState } from "./state-told.js";

/** With everything on, moving loads run together that never do. Where that fails, such a load is asked again beside the busy evening's lights. */
export function loadTold(
  context: CoachContext,
  load: Load,
  circuit: Circuit,
  of: "onV" | "dropV",
  limit: Limit,
): Told | undefined {
  const spannedOf = (loads: ReadonlyMap<string, unknown>) => {
    const found = loads.get(load.id) as { kind: string; value?: SpannedLoad } | undefined;
    return found?.kind === "known" && found.value !== undefined
      ? ({ kind: "known", value: found.value[of] } as const)
      : undefined;
  };
  const told = worstState(context, (spans) => ({ spanned: spannedOf(spans.loads) }), limit);
  const busy = context.busyState();
  if (told === undefined || told.verdict === "holds" || busy.on.has(circuit.id)) return told;
  const state = {
    ...busy,
    on: new Set([...busy.on, circuit.id]),
    name: `${busy.name} and ${load.name}`,
  };
  const spans = context.inState(state);
  if (spans.kind !== "known") return told;
  const beside = toldIn(spans.value, { spanned: spannedOf(spans.value.loads) }, limit);
  if (beside === undefined) return told;
  return beside.verdict === "holds" ? told : { ...beside, severity: "mend" };
}
