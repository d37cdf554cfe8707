import type { MilpSolver } from "@fusebook/core/plan";
import type { HighsPlace } from "./load-highs.js";
import { spawnBrowser } from "./spawn-browser.js";
import { workerSolver } from "./worker-solver.js";

/** The solver in a browser's worker. The app says where it serves the worker's file (`@fusebook/solver/worker-browser`) and, in `place`, `highs.wasm`. */
export const highsWorker = (workerUrl: string | URL, place: HighsPlace = {}): MilpSolver =>
  workerSolver(spawnBrowser(workerUrl), place);
