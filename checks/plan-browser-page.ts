import { highsWorker } from "@fusebook/solver/browser";
import { plansAsText } from "./plan-same-everywhere.js";

/** What the page under test offers: the plans of each record, made in the browser with the solver in a browser's worker. */
const plansOf = async (records: readonly string[]): Promise<string[]> => {
  const solver = highsWorker("/worker.js", { wasmUrl: "/highs.wasm" });
  const said: string[] = [];
  for (const record of records) said.push(await plansAsText(record, solver));
  solver.close();
  return said;
};

(globalThis as unknown as { plansOf: typeof plansOf }).plansOf = plansOf;
