export type { Balance } from "./balance.js";
export { buildCoach, nominalVOf } from "./build-coach.js";
export { type Assumed, CLASS_FIGURES, type ClassFigure } from "./class-figures.js";
export type { CoachNetwork } from "./coach-network.js";
export { allOnState, busyState, MOVING_CLASSES, onlyState } from "./coach-states.js";
export { type ConductorFigures, type ConductorSize, conductorSize } from "./conductor-size.js";
export { type FuseResistance, fuseResistance } from "./fuse-resistance.js";
export type { Line } from "./line-set.js";
export { currentByFit, fitOfLoad, labelAgainstReadings, loadAsRead } from "./load-as-read.js";
export { type LoadFigures, loadFiguresOf, loadModelOf, MODEL_OF_CLASS } from "./load-figures.js";
export { type DrawReading, fitLamp, type LampFit, type LampPrior } from "./load-fit.js";
export {
  DROP_OUT_RAMP_RATIO,
  FILAMENT_CURRENT_EXPONENT,
  isMonotone,
  type LoadModel,
  type LoadModelKind,
  loadCurrentA,
} from "./load-model.js";
export type { Network, NetworkBranch, NetworkLoad } from "./network.js";
export { pointKey } from "./point-key.js";
export {
  type CoachSolution,
  type CoachSpans,
  DROP_PLACES,
  type DropPart,
  type DropPlace,
  type LoadResult,
  type SpanMethod,
  type Spanned,
  type SpannedLoad,
} from "./results.js";
export { drawRecord } from "./sampling/draw-record.js";
export { drawnValue } from "./sampling/input-bank.js";
export { type JointRatio, jointRatio, quantilesOf } from "./sampling/quantiles.js";
export { sampleCoach } from "./sampling/sample-coach.js";
export type { CoachSamples, SampledInput, SampledLoad, SampledSupply, SampleOptions } from "./sampling/samples.js";
export { drawKeyOf, type InputAspect, type UncertainInput } from "./sampling/uncertain-input.js";
export { uncertainInputs } from "./sampling/uncertain-inputs.js";
export { solveCoach } from "./solve-coach.js";
export { type NetworkSolution, solveNetwork } from "./solve-network.js";
export { spanCoach } from "./span-coach.js";
export type { CoachState } from "./state.js";
export { conductorCOf, LAY_FACTOR, type WireResistance, wireResistance } from "./wire-resistance.js";
