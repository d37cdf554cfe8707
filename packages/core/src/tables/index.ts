export {
  ambientFactorByLaw,
  cfr183Ampacity,
  cfr183EngineFactor,
  deratedA,
  faaAmpacity,
  iso10133Ampacity,
  marineBundleFactor,
  necAmbientFactor,
  necBundleFactor,
} from "./ampacity.js";
export { chargeOfLead, lifepo4V, openCircuitOfLead } from "./batteries.js";
export { allTables, sourceOf, tableById } from "./catalogue.js";
export {
  areaOfCircularMilsMm2,
  areaOfGaugeMm2,
  COPPER_OHM_MM2_PER_M_20C,
  COPPER_PER_K_20C,
  circularMilsForDrop,
  circularMilsOf,
  copperOhmCmilPerFt,
  copperOhmMm2PerM,
  copperResistanceOhm,
  diameterOfGaugeMm,
  lengthForDropM,
  M_PER_FT,
  MM2_PER_CIRCULAR_MIL,
  resistanceRatio,
  runAtTemperatureM,
} from "./conductor-law.js";
export {
  awgAreaMm2,
  awgCircularMils,
  awgDiameterMm,
  faaOhmPerKm20C,
  iec60228Kt,
  iec60228OhmPerKm,
  iso6722OhmPerKm,
  necOhmPerKm75C,
  saeAreaMm2,
  saeCircularMils,
  saeSizes,
  solidOhmPerKm20C,
} from "./conductors.js";
export {
  CONTACT_LOADS,
  type ContactLoad,
  ceilingRatio,
  contactFactor,
  MARINE_K_OHM_CMIL_PER_FT,
  maxDropRatio,
  maxGroundReturnOhm,
  maxProtectionDistanceM,
  necContinuousFactor,
  necLowVoltageMaxA,
  necSmallConductorContinuousA,
  necSmallConductorMaxA,
  necStandardDevices,
} from "./device-rules.js";
export {
  bladeColdOhm,
  bladeColour,
  bladeGates,
  cartridgeFamilies,
  cartridgeGates,
  type FuseGate,
  type StandardFuse,
  standardFuses,
} from "./fuses.js";
export type { TableId } from "./published/all.js";
export { COIL_PER_K_25C, relayPullInV } from "./relay-coil.js";
export { showConductor } from "./show-conductor.js";
export { leastGaugeFor } from "./sizing.js";
export {
  type Cell,
  howOfRow,
  type Published,
  type PublishedTable,
  type Sourced,
  sourceFor,
  type TableSource,
} from "./table.js";
export {
  frameBits,
  j1939Addresses,
  type TrunkLimits,
  terminatedOhm,
  terminator,
  trunkLimits,
  trunkOhmPerM,
} from "./two-wire.js";
export { type WithstandRow, withstandFactor } from "./withstand.js";
