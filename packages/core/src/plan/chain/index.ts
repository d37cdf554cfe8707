export { type ChainFrontOptions, type ChainTurn, chainFront, type Settled } from "./chain-front.js";
export type {
  ChainColumn,
  ChainModule,
  ChainOption,
  ChainPattern,
  ChainPoint,
  ChainProblem,
  Taken,
} from "./chain-problem.js";
export { addUnbeaten, isNoWorse, type Measures, splitCorners } from "./corners.js";
export { OpenFront } from "./open-front.js";
export { MOST_CIRCUITS_OF_MODULE, MOST_PLACES } from "./prepared.js";
