import { compareSpan, type Figure, figureValue, spanOf } from "../../../quantity/index.js";
import type { CoachIndex } from "../../../record/index.js";
import { sourceOf } from "../../../tables/index.js";
import { defineRule, type Said } from "../../define-rule.js";
import { figureEvidence } from "../../evidence.js";
import { minutesFor } from "../../settle.js";
import { TWO_WIRE } from "../../subject.js";

/** Two terminators of 108 to 132 ohm each, side by side, as the table quotes them. */
const LOWEST_OHM = 108 / 2;
const HIGHEST_OHM = 132 / 2;
const TERMINATORS = 2;
const PATH = `${TWO_WIRE.path}.betweenWiresOhm`;

const ohmmeterBetween = (index: CoachIndex): Said["settledBy"] => [
  { path: PATH, instrument: "ohmmeter", minutes: minutesFor(index, "ohmmeter", undefined) },
];

function byResistance(index: CoachIndex, betweenWiresOhm: Figure): Said {
  const span = spanOf(betweenWiresOhm, "resistance");
  const low = compareSpan(span, LOWEST_OHM, "at-least");
  const high = compareSpan(span, HIGHEST_OHM, "at-most");
  const verdict = low === "fails" || high === "fails" ? "fails" : low === high ? low : "open";
  return {
    subject: TWO_WIRE,
    verdict,
    parameters: {
      by: "resistance",
      got: figureValue(betweenWiresOhm),
      gotLo: span.lo,
      gotHi: span.hi,
      lowest: LOWEST_OHM,
      highest: HIGHEST_OHM,
    },
    evidence: [figureEvidence(PATH, "resistance", "ohm", betweenWiresOhm)],
    settledBy: verdict === "open" ? ohmmeterBetween(index) : [],
  };
}

function byCount(index: CoachIndex, count: number | undefined): Said {
  const path = `${TWO_WIRE.path}.terminators`;
  return {
    subject: TWO_WIRE,
    verdict: count === undefined ? "open" : count === TERMINATORS ? "holds" : "fails",
    severity: count === undefined ? "note" : "watch",
    parameters: { by: "count", got: count ?? 0, wanted: TERMINATORS },
    evidence: count === undefined ? [] : [{ path, label: "terminators", unit: "count", value: count }],
    settledBy: count === undefined ? ohmmeterBetween(index) : [],
  };
}

export const terminationWrong = defineRule(
  {
    code: "termination-wrong",
    asks: "Does the two-wire network have its two terminators, no more and no fewer?",
    severity: "watch",
    source: sourceOf("can-phys"),
  },
  function* ({ index }) {
    const network = index.record.network;
    if (network === undefined) return;
    // What a meter reads between the wires counts for more than what somebody wrote down.
    yield network.betweenWiresOhm === undefined
      ? byCount(index, network.terminators?.length)
      : byResistance(index, network.betweenWiresOhm);
  },
);
