import type { Plan } from "@fusebook/core/plan";
import { type EstimateLine, estimateOf, partsListOf } from "@fusebook/core/procedure";
import type { CoachIndex } from "@fusebook/core/record";
import type { PacketView } from "../packet/packet-view.js";

/** Cents as money with the currency's own letters, "289.00 USD". */
const money = (cents: number, currency: string): string => {
  const [whole, part] = (Math.abs(cents) / 100).toFixed(2).split(".") as [string, string];
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, " ");
  return `${cents < 0 ? "−" : ""}${grouped}.${part} ${currency}`;
};

/** The estimate and the parts list in words. */
export function moneyOf(plan: Plan, before: CoachIndex): Pick<PacketView, "estimate" | "parts"> {
  const estimate = estimateOf(plan, before);
  const { currency } = estimate;
  const line = (one: EstimateLine) => ({
    what: one.what,
    quantity: one.unit === "minute" ? `${one.quantity} min` : String(one.quantity),
    each:
      one.eachCents === undefined
        ? "not known"
        : `${money(one.eachCents, currency)}${one.unit === "minute" ? " an hour" : ""}`,
    total: money(one.totalCents, currency),
  });
  return {
    estimate: {
      lines: estimate.lines.map(line),
      totals: [
        ["Sum", money(estimate.netCents, currency)],
        [`Tax ${Number((estimate.taxRatio * 100).toFixed(3))} %`, money(estimate.taxCents, currency)],
        ["To pay", money(estimate.totalCents, currency)],
      ],
      notes: estimate.needs.map((need) => `Not in the total, because the record does not say it: ${need}.`),
    },
    parts: partsListOf(plan, before).map((part) => ({
      part: part.what,
      quantity: String(part.quantity),
      note: [
        part.fromStock ? "from stock" : part.isReused === true ? "comes out of another position; test it first" : "",
        part.partNumber ?? "",
      ]
        .filter((word) => word !== "")
        .join(", "),
    })),
  };
}
