export {
  type BlockCircuit,
  type BlockLoad,
  type BlockReason,
  type BlockSuitability,
  blockSuitability,
  type DimmedRating,
  dimmedRating,
} from "./block-suitability.js";
export { type CapacitorInput, type CapacitorInputCurrents, capacitorInput } from "./capacitor-input.js";
export { circuitRatedCurrent, labelCurrentOf, ratedCurrentOf } from "./circuit-current.js";
export { type CircuitFeed, circuitFeed, feedOfDriver } from "./circuit-feed.js";
export { type CircuitSuitability, circuitSuitability, type JudgedLoad } from "./circuit-suitability.js";
export { type CircuitDimming, type DimmingOptions, dimmingOf, type LoadDimming } from "./dimming-of.js";
export { type DriverPulses, driverPulses, INPUT_CAPACITANCE, type SpannedFeed } from "./driver-pulses.js";
export { type DriverWorst, driverWorst } from "./driver-worst.js";
export { type CircuitAtDuty, dutyCurrents } from "./duty-currents.js";
export { type EvenRamp, type EvenRampStep, type EvenRampWish, evenRamp, type RampKind } from "./even-ramp.js";
export { FILAMENT_HEAT_SOURCE, FILAMENT_TIME_CONSTANT, type FilamentPulse, filamentPulse } from "./filament-heat.js";
export { FLICKER_SOURCE, type Flicker, type FlickerLimits, flickerLimits, flickerOf } from "./flicker.js";
export { flickerOfLoad, type LoadFlicker } from "./flicker-of-load.js";
export { FILAMENT_LIGHT_SOURCE, type LightOfDuty, lightExponentOf, lightOfDuty } from "./light-of-duty.js";
export { type LightAtDuty, lightTable, TABLE_DUTIES } from "./light-table.js";
export { LIGHTNESS_SOURCE, lightnessOf, luminanceRatioOf } from "./lightness.js";
export { LOOP_INDUCTANCE, stepPeakA } from "./loop-inductance.js";
export { DARK_LIGHTNESS, DARK_SOURCE, type LowestDuty, lowestUsefulDuty } from "./lowest-duty.js";
export { modulationOf } from "./modulation.js";
export {
  type DriverFeed,
  type LampFigures,
  type LightFilter,
  type Modulation,
  modulationDepth,
} from "./modulation-depth.js";
export { type KindRamps, type ModuleDimming, moduleDimming, rampsOfKind } from "./module-dimming.js";
export { filamentPulseRatio, type OnTimeDrop, onTimeDrop, type PulsedWire, pulseA } from "./on-time-drop.js";
export { powerOfDuty } from "./power-of-duty.js";
export { type PulseCurrents, pulseCurrents } from "./pulse.js";
export { type Ramp, type RampStep, type RampWish, rampOf } from "./ramp.js";
export { type Steadiness, steadyOf } from "./steady.js";
export { NEVER_DIMMED, type Suitability, type SuitabilityCode, suitabilityOf } from "./suitability.js";
