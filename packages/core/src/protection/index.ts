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
export { type BusCurrent, busCurrentOf } from "./bus-current.js";
export { type DeviceCeiling, deviceCeilingOf, fuseSizesAtMost } from "./device-ceiling.js";
export { type ProtectionDistance, protectionDistanceOf } from "./protection-distance.js";
