import { figureValue, spanOf, sum } from "../../../quantity/index.js";
import { sourceOf, tableById } from "../../../tables/index.js";
import { against } from "../../against.js";
import { defineRule } from "../../define-rule.js";
import { minutesFor, readingsThatSettle } from "../../settle.js";
import { TWO_WIRE } from "../../subject.js";

/** The longest trunk at the nearest listed bit rate that is no lower, m. */
function longestM(bitRateKbit: number): number | undefined {
  const rows = (tableById("can-length")?.rows ?? []).filter((row) => Number(row[0]) >= bitRateKbit);
  const nearest = rows.sort((a, b) => Number(a[0]) - Number(b[0]))[0];
  return nearest === undefined ? undefined : Number(nearest[1]);
}

export const networkTooLong = defineRule(
  {
    code: "network-too-long",
    asks: "Is the trunk of the two-wire network short enough for its bit rate?",
    severity: "watch",
    source: sourceOf("can-length"),
  },
  function* ({ index }) {
    const network = index.record.network;
    const parts = (network?.trunk ?? []).flatMap((stop) => (stop.toNextM === undefined ? [] : [stop.toNextM]));
    if (network === undefined || parts.length === 0) return;
    const totalM = parts.reduce<number>((total, part) => total + figureValue(part), 0);
    const span = sum(parts.map((part) => spanOf(part, "length")));
    const evidence = [{ path: "network.trunk", label: "trunk-length", unit: "m", value: totalM, span }] as const;
    const limitM = network.bitRateKbit === undefined ? undefined : longestM(figureValue(network.bitRateKbit));
    if (limitM === undefined) {
      yield {
        subject: TWO_WIRE,
        verdict: "open",
        severity: "note",
        parameters: { got: totalM, gotLo: span.lo, gotHi: span.hi },
        evidence,
        settledBy: [{ path: "network.bitRateKbit", instrument: "ask", minutes: minutesFor(index, "ask", undefined) }],
      };
      return;
    }
    const told = against({ value: totalM, span }, { value: limitM, unit: "m", sense: "at-most" });
    yield {
      subject: TWO_WIRE,
      ...told,
      evidence,
      settledBy:
        told.verdict === "open"
          ? readingsThatSettle(
              index,
              (network.trunk ?? []).map((stop, i) => ({
                path: `network.trunk[${i}].toNextM`,
                figure: stop.toNextM,
                instrument: "tape measure",
              })),
            )
          : [],
    };
  },
);
