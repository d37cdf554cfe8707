import { type Milp, MilpError, type MilpSolver } from "@fusebook/core/plan";
import type { Highs } from "highs";
import { type HighsLoader, type HighsPlace, loadHighs } from "./load-highs.js";
import { type OpenModel, openModel } from "./open-model.js";
import { refuseFaults, refuseRequest } from "./refuse-faults.js";
import { runHighs } from "./run-highs.js";
import { asMilpError, ReportThrew } from "./wasm-failure.js";

/**
 * The solver in this very thread: it is loaded at the first `open` and then kept. While a solve runs nothing else does, so a signal is seen only where
 * something sets it during a report; where others must go on working, use the worker.
 */
export function highsSolver(place: HighsPlace = {}, loader?: HighsLoader): MilpSolver {
  let loading: Promise<Highs> | undefined;
  const open = new Set<OpenModel>();
  const forget = () => {
    loading = undefined;
    open.clear();
  };
  return {
    async open(milp) {
      refuseFaults(milp);
      loading ??= loadHighs(place, loader);
      const highs = await loading.catch((error: unknown) => {
        forget();
        throw error;
      });
      const held = guarded(milp, forget, () => openModel(highs, milp));
      open.add(held);
      return {
        async solve(request = {}) {
          if (!open.has(held))
            throw new MilpError("session-closed", `${milp.name}: this session is closed; open the model again`);
          refuseRequest(milp, request);
          return guarded(milp, forget, () => runHighs(highs, held, request, () => request.signal?.aborted === true));
        },
        close() {
          if (open.delete(held)) held.model.dispose();
        },
      };
    },
    close() {
      for (const held of open) held.model.dispose();
      open.clear();
    },
  };
}

/** A solver that has broken off is left behind, since its memory is not to be trusted; the next `open` loads a fresh one. */
function guarded<Result>(milp: Milp, forget: () => void, work: () => Result): Result {
  try {
    return work();
  } catch (error) {
    if (error instanceof ReportThrew) throw error.thrown;
    if (error instanceof MilpError) throw error;
    forget();
    throw asMilpError(error, milp.name);
  }
}
