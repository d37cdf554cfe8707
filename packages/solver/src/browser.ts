export { highsWorker } from "./highs-browser-worker.js";
export { highsSolver } from "./highs-solver.js";
export type { HighsLoader, HighsPlace } from "./load-highs.js";
export type { FromWorker, SpawnWorker, ToWorker, WorkerEnd } from "./worker-messages.js";
export { workerSolver } from "./worker-solver.js";
