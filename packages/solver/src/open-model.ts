import type { Milp, MilpRequest } from "@fusebook/core/plan";
import type { Highs, Model } from "highs";
import { costUnit } from "./cost-unit.js";
import { modelDataOf } from "./model-data.js";

/** One seed for every solve, so that the same request gives the same answer. */
const SEED = 20_26;

/** The solver takes no infinite time: thirty years. */
const NO_LIMIT_S = 1e9;

/**
 * The bit of a reduction before solving that lost answers: with it, HiGHS 1.15.3 calls a small model infeasible that a plain look shows to have an answer
 * (`lost-answer.test.ts`). Off, 4000 models of small coaches gave what they give with all such reductions off.
 */
const ENUMERATION = 16;

/** A model that the solver holds, and whether it stands there as opened. */
export interface OpenModel {
  readonly milp: Milp;
  readonly model: Model;
  isChanged: boolean;
}

/** Puts a model into the solver's memory. */
export function openModel(highs: Highs, milp: Milp): OpenModel {
  const model = highs.createModel(modelDataOf(highs, milp));
  model.options.set({ output_flag: false, random_seed: SEED, mip_rel_gap: 0, presolve_rule_off: 1 << ENUMERATION });
  return { milp, model, isChanged: false };
}

/** The costs in the solver's units and the size of such a unit in the model's; `isWhole` where every answer costs a whole count of them. */
export interface Costing {
  readonly costs: readonly number[];
  readonly unit: number;
  readonly isWhole: boolean;
}

/**
 * Makes the held model say what the request says, whatever the one before said, and forgets all that earlier solves left behind.
 * Gap 0: without whole costs the gap allowed is the solver's least; with them, less than one unit.
 */
export function setRequest(held: OpenModel, request: MilpRequest): Costing {
  const { milp, model } = held;
  const costs = request.costs ?? milp.columns.map((column) => column.cost);
  const found = costUnit(milp, costs);
  const unit = found ?? 1;
  const all = { from: 0, to: milp.columns.length - 1 };
  const scaled = costs.map((cost) => cost / unit);
  model.changeColsCost({ kind: "range", ...all }, scaled);
  const changes = (request.rowBounds?.length ?? 0) + (request.columnBounds?.length ?? 0);
  if (held.isChanged || changes > 0) {
    const lower = milp.columns.map((column) => column.lower);
    const upper = milp.columns.map((column) => column.upper);
    for (const change of request.columnBounds ?? [])
      [lower[change.at], upper[change.at]] = [change.lower, change.upper];
    model.changeColsBounds({ kind: "range", ...all }, lower, upper);
    if (milp.rows.length > 0) {
      const rowLower = milp.rows.map((row) => row.lower);
      const rowUpper = milp.rows.map((row) => row.upper);
      for (const change of request.rowBounds ?? [])
        [rowLower[change.at], rowUpper[change.at]] = [change.lower, change.upper];
      model.changeRowsBounds({ kind: "range", from: 0, to: milp.rows.length - 1 }, rowLower, rowUpper);
    }
  }
  model.options.set({ mip_abs_gap: found === undefined ? 0 : 0.99, time_limit: request.timeS ?? NO_LIMIT_S });
  model.clearSolver();
  model.zeroAllClocks();
  held.isChanged = changes > 0;
  return { costs: scaled, unit, isWhole: found !== undefined };
}
