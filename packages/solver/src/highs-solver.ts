import { type Milp, MilpError, type MilpSolver, milpFaults, requestFaults } from "@fusebook/core/plan";
import type { Highs } from "highs";
import { type HighsLoader, type HighsPlace, loadHighs } from "./load-highs.js";
import { type OpenModel, openModel } from "./open-model.js";
import { runHighs } from "./run-highs.js";
import { asMilpError } from "./wasm-failure.js";

/** Refuses a model that has faults, naming them. */
export function refuseFaults(milp: Milp): void {
  const faults = milpFaults(milp);
  if (faults.length > 0) throw new MilpError("model-not-readable", `${milp.name}: ${firstOf(faults)}`, faults);
}

/** The first faults in words, and how many more there are. */
export const firstOf = (faults: readonly { readonly path: string; readonly message: string }[]): string =>
  `${faults
    .slice(0, 3)
    .map(({ path, message }) => `${path}: ${message}`)
    .join("; ")}${faults.length > 3 ? `; and ${faults.length - 3} more` : ""}`;

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
          const faults = requestFaults(milp, request);
          if (faults.length > 0) throw new MilpError("model-not-readable", `${milp.name}: ${firstOf(faults)}`, faults);
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

/** A solver whose memory has broken is left behind; the next `open` loads a fresh one. */
function guarded<Result>(milp: Milp, forget: () => void, work: () => Result): Result {
  try {
    return work();
  } catch (error) {
    const named = asMilpError(error, milp.name);
    if (named !== undefined) {
      if (named !== error) forget();
      throw named;
    }
    throw error;
  }
}
