import type { Plan } from "../plan/index.js";
import { type CoachIndex, policyOf } from "../record/index.js";
import { partsListOf } from "./parts-list.js";

export interface EstimateLine {
  readonly code: "part" | "labour";
  readonly what: string;
  readonly quantity: number;
  readonly unit: "piece" | "minute";
  /** A piece, or an hour of labour; absent where the record has no price or rate. */
  readonly eachCents?: number;
  readonly totalCents: number;
}

/** Money in whole minor units. */
export interface Estimate {
  readonly lines: readonly EstimateLine[];
  readonly currency: string;
  /** Parts and labour, tax not in it. */
  readonly netCents: number;
  readonly taxRatio: number;
  readonly taxCents: number;
  readonly totalCents: number;
  /** Prices and rates that were missing and counted as nothing, by path or by name. */
  readonly needs: readonly string[];
}

const TAX_PARTS = 100_000_000;

/** Tax in whole cents, half a cent up. The ratio is taken to eight decimals, so that 0.07 is exactly seven hundredths. */
export function taxCentsOf(netCents: number, taxRatio: number): number {
  const parts = BigInt(Math.round(taxRatio * TAX_PARTS));
  return Number((BigInt(netCents) * parts * 2n + BigInt(TAX_PARTS)) / BigInt(2 * TAX_PARTS));
}

/** What will it cost the owner? Parts that must be bought, labour by the plan's minutes and the coach's rate, tax on both. */
export function estimateOf(plan: Plan, index: CoachIndex): Estimate {
  const policy = policyOf(index.record);
  const needs = new Set(plan.costNeeds);
  const lines: EstimateLine[] = partsListOf(plan, index).map((part) => {
    if (!part.fromStock && part.eachCents === undefined && part.kind === undefined) needs.add(`price of ${part.what}`);
    const origin = part.fromStock
      ? " (from stock)"
      : part.isReused === true
        ? " (taken out elsewhere in this job)"
        : "";
    return {
      code: "part",
      what: `${part.what}${origin}`,
      quantity: part.quantity,
      unit: "piece",
      ...(part.eachCents === undefined ? {} : { eachCents: part.eachCents }),
      totalCents: (part.eachCents ?? 0) * part.quantity,
    };
  });
  const rateCents = Math.round(policy.labourRatePerHour * 100);
  if (plan.minutes > 0)
    lines.push({
      code: "labour",
      what: "Labour",
      quantity: plan.minutes,
      unit: "minute",
      ...(index.record.policy?.labourRatePerHour === undefined ? {} : { eachCents: rateCents }),
      totalCents: Math.round((plan.minutes * rateCents) / 60),
    });
  if (index.record.policy?.taxRatio === undefined) needs.add("policy.taxRatio");
  const netCents = lines.reduce((sum, line) => sum + line.totalCents, 0);
  const taxCents = taxCentsOf(netCents, policy.taxRatio);
  return {
    lines,
    currency: policy.currency,
    netCents,
    taxRatio: policy.taxRatio,
    taxCents,
    totalCents: netCents + taxCents,
    needs: [...needs],
  };
}
