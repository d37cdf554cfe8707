export {
  ADIABATIC_SOURCE,
  adiabaticFactor,
  FUSING_SOURCE,
  iceaTimeS,
  meltingCurrentA,
  meltingTimeS,
  withstandAreaMm2,
  withstandTimeS,
} from "./adiabatic.js";
export { type Ampacity, type AmpacityFactor, ampacityOf } from "./ampacity.js";
export { type CableFault, cableFaultOf, type ProspectiveAtDevice, prospectiveAtFuse } from "./at-device.js";
export { type BusCurrent, busCurrentOf } from "./bus-current.js";
export { circuitInrushOf } from "./circuit-inrush.js";
export { DEMAND_FACTORS, DEMAND_SOURCE, type Demand, type DemandFactor, demandOf, moduleDemandOf } from "./demand.js";
export { type DeviceCeiling, deviceCeilingOf, fuseSizesAtMost } from "./device-ceiling.js";
export {
  type DeviceAbove,
  type FarFault,
  type FaultConductor,
  type FaultEnd,
  type FaultPart,
  faultAtFarEnd,
} from "./far-fault.js";
export {
  CLEARED_WITHIN_S,
  type ConductorInFault,
  conductorInFault,
  type FaultClearing,
  faultClearing,
} from "./fault-clearing.js";
export { type FaultSource, shortCurrent } from "./fault-source.js";
export { type FuseGates, fuseGatesOf, type GateSet } from "./fuse-gates.js";
export { type Inrush, type InrushOptions, inrushOf } from "./inrush.js";
export { type InrushCurve, type InrushFeed, inrushAt, inrushCurve } from "./inrush-curve.js";
export { type InrushUnits, inrushUnitsOf } from "./inrush-figures.js";
export { type InrushMargin, type InrushVerdict, inrushMargin, inrushVerdict } from "./inrush-margin.js";
export type { InrushUnit } from "./inrush-units.js";
export { bendsA, leastOpeningA, type OpeningTimes, openingTimes, sureOpeningA } from "./opening-times.js";
export { type ProtectionDistance, protectionDistanceOf } from "./protection-distance.js";
export {
  type AboveCircuit,
  type CircuitProtection,
  circuitFuseOf,
  type EndInFault,
  protectionOf,
} from "./protection-of.js";
export { type Selectivity, selectivityOf } from "./selectivity.js";
export { type CoachTotals, type StateTotals, totalsOf } from "./totals.js";
export {
  namedPolicy,
  POLICY_NAMES,
  type PolicyName,
  type RunUnderPolicy,
  type UnderPolicy,
  underPolicies,
} from "./under-policies.js";
export { ADIABATIC_UP_TO_S, type Withstand, withstandOf } from "./withstand-of.js";
