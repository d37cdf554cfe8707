export { type ChainFrontOptions, type ChainTurn, chainFront, type Settled } from "./chain-front.js";
export { type ChainForm, chainOfProblem, notAChain } from "./chain-of-problem.js";
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
export { culpritsOf } from "./culprits.js";
export { OpenFront } from "./open-front.js";
export { MOST_CIRCUITS_OF_MODULE, MOST_PLACES } from "./prepared.js";
export {
  type FrontPoint,
  type FrontProgress,
  frontOfProblem,
  type ProblemFront,
  type ProblemFrontOptions,
} from "./problem-front.js";
export { rowOfModules } from "./row-of-modules.js";
export { type Element, elementKey, withoutElements } from "./without-elements.js";
export { worthiestForMoney } from "./worthiest-for-money.js";
