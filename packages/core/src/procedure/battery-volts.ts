import { nominalVOf, onlyState, solveCoach } from "../network/index.js";
import { figureValue, hull, type Span, span, spanOf } from "../quantity/index.js";
import type { CoachIndex, Supply } from "../record/index.js";
import { caution, given } from "./make-step.js";
import type { Caution, ExpectedReading } from "./procedure.js";

/** A dead point reads at most this: meters pick up some millivolts and capacitors keep a little. Common practice, no source. */
export const DEAD_MAX_V = 0.1;
/** A lead-acid or lithium battery off its charger reads high for hours; a share of the nominal volts. Common practice, no source. */
const JUST_CHARGED_RATIO = 0.05;
/** An empty to a full 12 V battery at rest, per volt of the nominal. Common practice, no source; the record's own curve wins. */
const REST_RATIO: Span = { lo: 11.5 / 12, hi: 13.4 / 12 };
/** More than a module's own electronics drop over a sound feeder. Common practice, no source. */
const FEED_DROP_MIN_V = 0.05;

export const batteriesOf = (index: CoachIndex): Supply[] =>
  [...index.supplies.values()].filter((supply) => supply.kind === "battery");

/**
 * What the battery may read at rest on the day of the work: over its whole curve, or a battery's usual range where there is none, and a little above
 * for one that was just on charge. The figure found at the survey is the nominal: the charge may have changed since.
 */
export function batteryVolts(index: CoachIndex, battery: Supply | undefined): { nominal: number; span: Span } {
  const nominalV = nominalVOf(index);
  const found = battery?.openCircuitV;
  const curve = (battery?.openCircuitCurve ?? []).map((row) => row.openCircuitV);
  const usual =
    curve.length > 1
      ? span(Math.min(...curve), Math.max(...curve))
      : span(nominalV * REST_RATIO.lo, nominalV * REST_RATIO.hi);
  const whole = found === undefined ? usual : hull(usual, spanOf(found, "voltage"));
  return {
    nominal: found === undefined ? (whole.lo + whole.hi) / 2 : figureValue(found),
    span: span(whole.lo, whole.hi + nominalV * JUST_CHARGED_RATIO),
  };
}

export function batteryReading(index: CoachIndex, battery: Supply | undefined): ExpectedReading {
  return { what: `${battery?.name ?? "Battery"}, post to post`, unit: "V", ...batteryVolts(index, battery) };
}

/** Volts at a module's feed with nothing on, and the most it may lie below what was read at the battery. */
export function feedReading(
  index: CoachIndex,
  feedNode: string | undefined,
): { readonly reading: ExpectedReading; readonly dropMaxV: number } | undefined {
  const battery = batteriesOf(index)[0];
  if (feedNode === undefined || battery === undefined) return undefined;
  const volts = batteryVolts(index, battery);
  const solved = solveCoach(index, onlyState(index, [], "nothing on"));
  const atFeed = solved.kind === "known" ? solved.value.nodeV.get(feedNode) : undefined;
  const atBattery =
    solved.kind === "known" && battery.node !== undefined ? solved.value.nodeV.get(battery.node) : undefined;
  const dropV = atFeed === undefined || atBattery === undefined ? 0 : Math.max(0, atBattery - atFeed);
  const dropMaxV = Math.max(FEED_DROP_MIN_V, 2 * dropV);
  return {
    reading: {
      what: `${index.nodes.get(feedNode)?.name ?? feedNode} to battery negative`,
      unit: "V",
      nominal: volts.nominal - dropV,
      span: span(volts.span.lo - dropMaxV, volts.span.hi),
    },
    dropMaxV,
  };
}

/** Metal across the posts: with the current the battery can drive, where its resistance is known. */
function burnAndArc(battery: Supply | undefined): Caution {
  const openV = battery?.openCircuitV;
  const ohm = battery?.internalResistanceOhm;
  const prospectiveA =
    openV === undefined || ohm === undefined || figureValue(ohm) <= 0
      ? undefined
      : Math.round(figureValue(openV) / figureValue(ohm) / 10) * 10;
  return caution("burn-and-arc", given({ battery: battery?.name, prospectiveA }));
}

/** What bites at a battery's posts. A battery of unknown chemistry may be flooded. */
export function batteryCautions(battery: Supply | undefined): Caution[] {
  const mayGas = battery?.chemistry === undefined || battery.chemistry === "flooded";
  return [burnAndArc(battery), ...(mayGas ? [caution("battery-gas", given({ battery: battery?.name }))] : [])];
}
