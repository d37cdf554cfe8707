export { highsSolver } from "./highs-solver.js";
export { highsWorker } from "./highs-worker.js";
export type { HighsLoader, HighsPlace } from "./load-highs.js";
export type { FromWorker, SpawnWorker, ToWorker, WorkerEnd } from "./worker-messages.js";
export { workerSolver } from "./worker-solver.js";
