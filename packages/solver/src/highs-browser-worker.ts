import type { MilpSolver } from "@fusebook/core/plan";
import { withModule } from "./compiled-module.js";
import type { HighsPlace } from "./load-highs.js";
import { spawnBrowser } from "./spawn-browser.js";
import { workerSolver } from "./worker-solver.js";

/** The part of the platform's `fetch` that is used. */
type Fetch = (url: string) => Promise<{ readonly ok: boolean; arrayBuffer(): Promise<ArrayBuffer> }>;

/** The solver in a browser's worker. The app says where it serves the worker's file (`@fusebook/solver/worker-browser`) and, in `place`, `highs.wasm`. */
export const highsWorker = (workerUrl: string | URL, place: HighsPlace = {}): MilpSolver =>
  workerSolver(spawnBrowser(workerUrl), place, async (from) => {
    const { wasmUrl } = from;
    if (wasmUrl === undefined) return from;
    return withModule(from, wasmUrl, async () => {
      const response = await (globalThis as unknown as { readonly fetch: Fetch }).fetch(wasmUrl);
      if (!response.ok) throw new Error(`${wasmUrl} is not there`);
      return new Uint8Array(await response.arrayBuffer());
    });
  });
