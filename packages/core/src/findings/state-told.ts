import type { CoachSpans, Spanned } from "../network/index.js";
import type { Outcome } from "../quantity/index.js";
import { against, type Limit } from "./against.js";
import type { CoachContext } from "./context.js";
import type { Said } from "./define-rule.js";

/** What a state says of one figure: known with its span, or at least this much where some parts are missing. */
export interface Reading {
  readonly spanned: Outcome<Spanned> | undefined;
  readonly atLeast?: number | undefined;
}

export type Told = Pick<Said, "verdict" | "limit" | "severity"> & { parameters: Record<string, string | number> };

/** One state's figure against a limit; undefined where too much is missing to say anything. */
export function toldIn(spans: CoachSpans, reading: Reading, limit: Limit): Told | undefined {
  const { spanned, atLeast } = reading;
  const state = spans.state.name;
  if (spanned?.kind === "known") {
    const told = against({ value: spanned.value.nominal, span: spanned.value.span }, limit);
    return { ...told, parameters: { ...told.parameters, state, isAtLeast: "no" } };
  }
  // With loads left out the figure can only be higher: enough to fail, never to hold.
  if (spanned?.kind !== "missing" || atLeast === undefined || limit.sense !== "at-most") return undefined;
  const told = against({ value: atLeast, span: { lo: atLeast, hi: atLeast } }, limit);
  if (told.verdict !== "fails") return undefined;
  return { ...told, parameters: { ...told.parameters, state, isAtLeast: "yes" } };
}

const RANK = { fails: 0, open: 1, holds: 2 } as const;

/**
 * A figure in the two named states. What fails in the busy state must be mended; what fails only with everything on is to be watched. The worse of
 * the two is told; undefined where neither can say.
 */
export function worstState(
  context: CoachContext,
  read: (spans: CoachSpans) => Reading,
  limit: Limit,
): Told | undefined {
  const busy = context.busy();
  const allOn = context.allOn();
  const inBusy = busy === undefined ? undefined : toldIn(busy, read(busy), limit);
  const inAllOn = allOn === undefined ? undefined : toldIn(allOn, read(allOn), limit);
  const told: Told[] = [];
  if (inBusy !== undefined) told.push({ ...inBusy, severity: "mend" });
  if (inAllOn !== undefined) told.push({ ...inAllOn, severity: "watch" });
  return told.sort((a, b) => RANK[a.verdict] - RANK[b.verdict])[0];
}
