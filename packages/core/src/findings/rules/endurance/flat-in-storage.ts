import { parasiticOf } from "../../../endurance/index.js";
import { COMMON_PRACTICE, type Source } from "../../../quantity/index.js";
import { against } from "../../against.js";
import { defineRule } from "../../define-rule.js";
import { type Leaned, readingsThatSettle } from "../../settle.js";
import { RECORD_POLICY } from "../../sources.js";
import { ofCoach } from "../../subject.js";

/** Common practice, no source: a coach stands a month between trips. */
const STORED_DAYS = 30;
/** No end: a hundred years. */
const MOST_DAYS = 36500;

const days = (hours: number): number => Math.min(MOST_DAYS, hours / 24);

export const flatInStorage = defineRule(
  {
    code: "flat-in-storage",
    asks: "Do the batteries stand the days that the coach is stored, everything off and no charger?",
    severity: "watch",
    source: COMMON_PRACTICE,
  },
  function* ({ index, policy }) {
    const found = parasiticOf(index);
    if (found.kind !== "known") return;
    const { draws, hoursToFlat, assumed, needs } = found.value;
    const { nominal, span } = hoursToFlat;
    const said = against(
      // A detector whose draw is not known only makes it sooner.
      { value: days(nominal), span: { lo: needs.length > 0 ? 0 : days(span.lo), hi: days(span.hi) } },
      { value: policy.storedDays ?? STORED_DAYS, unit: "count", sense: "at-least" },
    );
    const memory = [...draws, ...assumed].map((one) => one.source).find((source) => source.how === "memory");
    const rests: Source[] = memory === undefined ? [] : [memory];
    const leaned: Leaned[] = [
      ...draws
        .filter((draw) => draw.kind !== "self-discharge" && draw.basis !== "measured")
        .map((draw): Leaned => ({ path: draw.path, figure: undefined, instrument: "clamp meter" })),
      ...[...index.supplies.values()]
        .filter((supply) => supply.kind === "battery")
        .map((supply): Leaned => {
          const path = `${index.pathOf("supplies", supply.id)}.chargeRatio`;
          return { path, figure: supply.chargeRatio, instrument: "voltmeter", place: supply.place };
        }),
    ];
    yield {
      subject: ofCoach(index),
      ...said,
      parameters: { ...said.parameters, totalA: found.value.totalA },
      evidence: draws.slice(0, 8).map((draw) => ({
        path: draw.path,
        label: "standing-draw" as const,
        unit: "A" as const,
        value: draw.currentA,
        ...(draw.basis === undefined ? {} : { basis: draw.basis }),
        span: draw.span,
      })),
      source: policy.storedDays === undefined ? COMMON_PRACTICE : RECORD_POLICY,
      alsoRestsOn: rests,
      settledBy: said.verdict === "open" ? readingsThatSettle(index, leaned) : [],
    };
  },
);
