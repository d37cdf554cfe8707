export { highsSolver } from "./highs-solver.js";
export type { HighsLoader, HighsPlace } from "./load-highs.js";
