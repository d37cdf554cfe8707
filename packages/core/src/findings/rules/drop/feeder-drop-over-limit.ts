import { type CoachSpans, fuseResistance, type Spanned } from "../../../network/index.js";
import { add, known, missing, mul, type Outcome, type Span, sum } from "../../../quantity/index.js";
import type { Cable, Module } from "../../../record/index.js";
import { maxDropRatio } from "../../../tables/index.js";
import type { CoachContext } from "../../context.js";
import { defineRule } from "../../define-rule.js";
import { runLeans } from "../../leans.js";
import { readingsThatSettle } from "../../settle.js";
import { RECORD_POLICY } from "../../sources.js";
import { type Reading, worstState } from "../../state-told.js";
import { ofModule } from "../../subject.js";

const PUBLISHED = maxDropRatio("critical");

/** The cables between a module and the supply it hangs on. */
function feedersOf(context: CoachContext, module: Module): Cable[] {
  const { sourceEnd, reachedBy } = context.wiring().positive;
  const way: Cable[] = [];
  for (let at: string | undefined = module.feedNode; at !== undefined; ) {
    const by = reachedBy.get(at);
    if (by === undefined || way.includes(by)) break;
    way.push(by);
    at = sourceEnd.get(by.id);
  }
  return way;
}

/** The drop along these cables and their devices: the current's span times the resistance's, an enclosure. */
function dropAlong(context: CoachContext, feeders: readonly Cable[], spans: CoachSpans): Reading {
  const parts: Span[] = [];
  let nominal = 0;
  const needs: string[] = [];
  for (const cable of feeders) {
    const current = spans.cableA.get(cable.id);
    const dropV = spans.nominal.cableDropV.get(cable.id);
    const wire = context.resistance(cable);
    if (current?.kind !== "known" || dropV?.kind !== "known" || wire.kind !== "known") {
      for (const each of [current, dropV, wire]) if (each?.kind === "missing") needs.push(...each.needs);
      continue;
    }
    const device = cable.protection === undefined ? undefined : fuseResistance(cable.protection).span;
    parts.push(mul(current.value.span, device === undefined ? wire.value.span : add(wire.value.span, device)));
    nominal += dropV.value;
  }
  if (parts.length < feeders.length) return { spanned: missing(...needs) };
  const spanned: Outcome<Spanned> = known({ nominal, span: sum(parts), method: "enclosure" });
  return { spanned };
}

export const feederDropOverLimit = defineRule(
  {
    code: "feeder-drop-over-limit",
    asks: "Is the voltage lost between supply and each module within the limit?",
    severity: "mend",
    source: PUBLISHED.source,
  },
  function* (context) {
    const { index, policy, nominalV } = context;
    const ratio = policy.maxDropRatioFeeder;
    for (const module of index.modules.values()) {
      const feeders = feedersOf(context, module);
      if (feeders.length === 0) continue;
      const told = worstState(context, (spans) => dropAlong(context, feeders, spans), {
        value: ratio * nominalV,
        unit: "V",
        sense: "at-most",
      });
      if (told === undefined) continue;
      yield {
        subject: ofModule(index, module),
        ...told,
        source: ratio === PUBLISHED.value ? PUBLISHED.source : RECORD_POLICY,
        parameters: { ...told.parameters, ratio },
        evidence: feeders.map((cable) => ({
          path: index.pathOf("cables", cable.id),
          label: "resistance" as const,
          unit: "ohm" as const,
          value: resistanceShown(context, cable),
        })),
        settledBy:
          told.verdict === "open"
            ? readingsThatSettle(
                index,
                feeders.flatMap((cable) => runLeans(cable, index.pathOf("cables", cable.id))),
              )
            : [],
      };
    }
  },
);

const resistanceShown = (context: CoachContext, cable: Cable): number => {
  const wire = context.resistance(cable);
  return wire.kind === "known" ? wire.value.ohm : 0;
};
