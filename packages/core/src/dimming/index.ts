export {
  type BlockCircuit,
  type BlockLoad,
  type BlockReason,
  type BlockSuitability,
  blockSuitability,
  type DimmedRating,
  dimmedRating,
} from "./block-suitability.js";
export { circuitRatedCurrent, ratedCurrentOf } from "./circuit-current.js";
export { type Steadiness, steadyOf } from "./steady.js";
export { NEVER_DIMMED, type Suitability, type SuitabilityCode, suitabilityOf } from "./suitability.js";
