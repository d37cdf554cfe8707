export { type BankGroup, bankGroups } from "./bank-groups.js";
export type { BankRun } from "./bank-run.js";
export {
  type BatteryBank,
  type BatteryOptions,
  batteryBankOf,
  type EnduranceAssumed,
  type Spread,
} from "./battery-figures.js";
export type { BoundPoint } from "./bound-run.js";
export { type ChargeFound, chargeFound, chargeOfRestedVolts, HALF_CHARGE_TABLES_V } from "./charge-found.js";
export {
  type BatteryClassFigure,
  CLASS_BATTERY,
  CLASS_STANDING,
  MARKED_AT_C,
  UNKNOWN_BATTERY_C,
} from "./class-battery.js";
export { isDimmingChannel } from "./dimmed-channel.js";
export { chargeRatePerHour, type Drained } from "./drain.js";
export { type Endurance, type EnduranceOptions, enduranceOf } from "./endurance.js";
export type { EnergyOf } from "./energy.js";
export { MeanNetwork, type MeanPoint } from "./mean-network.js";
export type { ChargePoint, RunEnd } from "./nominal-run.js";
export { type Parasitic, type ParasiticDraw, parasiticOf } from "./parasitic.js";
export {
  capacityAtHoursAh,
  chargeLostPerHour,
  peukertHours,
  type RatedBattery,
  ratedCurrentOfBatteryA,
} from "./peukert.js";
export { type PreparedProfile, prepareProfile } from "./prepare-profile.js";
export { type CircuitUse, type SpanUse, spanUses } from "./profile-circuits.js";
export { profileFault, profileFor, profilesOf, readProfile } from "./profile-faults.js";
export { PROFILE_IDS, PROFILE_SOURCE, PROFILES, type ProfileId } from "./profiles.js";
export { type StandingDraw, standingDraws } from "./standing.js";
export { capacityShareAt } from "./temperature.js";
