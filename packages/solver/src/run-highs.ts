import { type MilpAnswer, MilpError, type MilpProgress, type MilpRequest, objectiveOf } from "@fusebook/core/plan";
import type { Highs, HighsCallbackMap } from "highs";
import { type Costing, type OpenModel, setRequest } from "./open-model.js";
import { beforehand, stoppedAnswer } from "./stopped-answer.js";
import { holds, tidyValues } from "./tidy-answer.js";
import { ReportThrew } from "./wasm-failure.js";

/** Seconds between two reports that bring no better answer. */
const REPORT_EVERY_S = 0.1;
/** Feasibility tolerances for the second try, where a rounded answer did not keep its rows. */
const TIGHT = { mip_feasibility_tolerance: 1e-9, primal_feasibility_tolerance: 1e-9 };

/** Solves a held model once, in this thread, from start to end. `isStopped` is asked at the solver's own checkpoints. */
export function runHighs(highs: Highs, held: OpenModel, request: MilpRequest, isStopped: () => boolean): MilpAnswer {
  const { milp, model } = held;
  const known = beforehand(milp, request);
  if (isStopped()) return stoppedAnswer(milp, request, known, { bound: -Infinity, nodes: 0 });
  if (milp.columns.length === 0)
    return holds(milp, [], request)
      ? { status: "optimal", values: [], objective: 0, bound: 0, nodes: 0 }
      : { status: "infeasible", bound: Infinity, nodes: 0 };

  const costing = setRequest(held, request);
  if (known.start !== undefined) model.setSolution({ colValue: known.start });
  const watch = watching(highs, held, request, costing, known.bound, isStopped);
  const answered = (): MilpAnswer | undefined => {
    const { modelStatus } = highs.constants;
    const nodes = Math.max(0, Number(model.info.get("mip_node_count")));
    switch (model.getModelStatus()) {
      case modelStatus.optimal: {
        const values = tidyValues(milp, model.getSolution().colValue, request.columnBounds);
        if (!holds(milp, values, request)) return undefined;
        const objective = objectiveOf(milp, values, request.costs);
        return { status: "optimal", values, objective, bound: objective, nodes };
      }
      case modelStatus.infeasible:
        return { status: "infeasible", bound: Infinity, nodes };
      case modelStatus.timeLimit:
      case modelStatus.interrupted:
        return stoppedAnswer(milp, request, known, { values: watch.best(), bound: watch.bound(), nodes });
      default:
        return undefined;
    }
  };

  const first = attempt(held, watch.callbacks, watch.rethrow, answered);
  if (first !== undefined) return first;
  const status = model.getModelStatus();
  if (status === highs.constants.modelStatus.unbounded || status === highs.constants.modelStatus.unboundedOrInfeasible)
    return withoutCosts(highs, held, request, isStopped);
  model.options.set(TIGHT);
  model.clearSolver();
  const second = attempt(held, watch.callbacks, watch.rethrow, answered);
  model.options.set({ mip_feasibility_tolerance: 1e-6, primal_feasibility_tolerance: 1e-7 });
  if (second !== undefined) return second;
  throw new MilpError(
    "solver-failed",
    `${milp.name}: the solver ended without an answer that keeps every rule when rounded (its status ${model.getModelStatus()}); ` +
      "count money and minutes in smaller numbers, or write the model out and try it elsewhere",
  );
}

function attempt(
  { model }: OpenModel,
  callbacks: HighsCallbackMap,
  rethrow: () => void,
  answered: () => MilpAnswer | undefined,
): MilpAnswer | undefined {
  try {
    model.run(callbacks);
  } finally {
    rethrow();
  }
  return answered();
}

/** Tells a model without any answer from one whose cost can fall for ever. */
function withoutCosts(highs: Highs, held: OpenModel, request: MilpRequest, isStopped: () => boolean): MilpAnswer {
  const { costs: _costs, start: _start, onProgress: _report, ...rest } = request;
  const answer = runHighs(highs, held, { ...rest, costs: held.milp.columns.map(() => 0) }, isStopped);
  if (answer.status === "infeasible") return answer;
  if (answer.status === "stopped") return { status: "stopped", bound: -Infinity, nodes: answer.nodes };
  throw new MilpError(
    "unbounded",
    `${held.milp.name}: its cost can fall without end; give every column with a negative cost an upper end`,
  );
}

/** Listens to a running solve: keeps the best answer and the best bound, reports them, and stops the run when asked. */
function watching(
  highs: Highs,
  { milp }: OpenModel,
  request: MilpRequest,
  { unit, isWhole }: Costing,
  trivial: number,
  isStopped: () => boolean,
) {
  let bestValues: number[] | undefined;
  let best = Infinity;
  let bound = trivial;
  let lastS = -Infinity;
  let thrown: ReportThrew | undefined;
  const { callbackType } = highs.constants;
  const raise = (proven: unknown) => {
    if (typeof proven !== "number" || !Number.isFinite(proven)) return;
    bound = Math.max(bound, (isWhole ? Math.ceil(proven - 1e-6) : proven) * unit);
  };
  const report = (nodes: unknown, values?: readonly number[]) => {
    const shown = Math.min(bound, best);
    const progress: MilpProgress = {
      bound: shown,
      gapRatio: best === Infinity ? Infinity : (best - shown) / Math.max(1, Math.abs(best)),
      nodes: Number(nodes ?? 0),
      ...(best === Infinity ? {} : { best }),
      ...(values === undefined ? {} : { values }),
    };
    if (thrown !== undefined) return;
    try {
      request.onProgress?.(progress);
    } catch (error) {
      thrown = new ReportThrew(error);
    }
  };
  const callbacks: HighsCallbackMap = {
    [callbackType.mipImprovingSolution](event) {
      raise(event.data.mip_dual_bound);
      if (event.data.mip_solution === undefined) return;
      const values = tidyValues(milp, event.data.mip_solution, request.columnBounds);
      const objective = objectiveOf(milp, values, request.costs);
      if (!(objective < best) || !holds(milp, values, request)) return;
      [best, bestValues] = [objective, values];
      report(event.data.mip_node_count, values);
    },
    [callbackType.mipInterrupt](event) {
      raise(event.data.mip_dual_bound);
      const nowS = event.data.running_time ?? 0;
      if (nowS - lastS >= REPORT_EVERY_S) {
        lastS = nowS;
        report(event.data.mip_node_count);
      }
      if (thrown !== undefined || isStopped()) event.interrupt();
    },
    [callbackType.mipLogging](event) {
      raise(event.data.mip_dual_bound);
    },
    [callbackType.simplexInterrupt](event) {
      if (isStopped()) event.interrupt();
    },
  };
  return {
    callbacks,
    best: () => bestValues,
    bound: () => bound,
    rethrow: () => {
      if (thrown !== undefined) throw thrown;
    },
  };
}
