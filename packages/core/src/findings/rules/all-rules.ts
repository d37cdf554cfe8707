import type { Rule } from "../rule.js";
import { addressNotAsProgrammed } from "./address/address-not-as-programmed.js";
import { addressNotShownBySwitches } from "./address/address-not-shown-by-switches.js";
import { addressOutOfRange } from "./address/address-out-of-range.js";
import { addressUnknown } from "./address/address-unknown.js";
import { bankCodeFaulty } from "./address/bank-code-faulty.js";
import { bankCodeMissing } from "./address/bank-code-missing.js";
import { duplicateAddress } from "./address/duplicate-address.js";
import { networkAddressNotOnRecord } from "./address/network-address-not-on-record.js";
import { optionSettingUnknown } from "./address/option-setting-unknown.js";
import { conductorUnderMinimum } from "./conductor/conductor-under-minimum.js";
import { feederDeviceOverConductor } from "./conductor/feeder-device-over-conductor.js";
import { groundResistanceHigh } from "./conductor/ground-resistance-high.js";
import { protectionFarFromSource } from "./conductor/protection-far-from-source.js";
import { protectionMissing } from "./conductor/protection-missing.js";
import { returnMissing } from "./conductor/return-missing.js";
import { sharedReturnPoor } from "./conductor/shared-return-poor.js";
import { cablesFormLoop } from "./consistency/cables-form-loop.js";
import { channelClaimedTwice } from "./consistency/channel-claimed-twice.js";
import { channelOutOfRange } from "./consistency/channel-out-of-range.js";
import { danglingReference } from "./consistency/dangling-reference.js";
import { dimBlockOutOfRange } from "./consistency/dim-block-out-of-range.js";
import { duplicateId } from "./consistency/duplicate-id.js";
import { feedWithoutPath } from "./consistency/feed-without-path.js";
import { lengthNotPositive } from "./consistency/length-not-positive.js";
import { loadClaimedTwice } from "./consistency/load-claimed-twice.js";
import { loadNotFed } from "./consistency/load-not-fed.js";
import { ratingNotPositive } from "./consistency/rating-not-positive.js";
import { toleranceOverValue } from "./consistency/tolerance-over-value.js";
import { wireToNowhere } from "./consistency/wire-to-nowhere.js";
import { classGuessed } from "./dimming/class-guessed.js";
import { dimmedChannelOverRating } from "./dimming/dimmed-channel-over-rating.js";
import { dimmedLoadNotSuited } from "./dimming/dimmed-load-not-suited.js";
import { dimsNotDeep } from "./dimming/dims-not-deep.js";
import { driverInrushOverRating } from "./dimming/driver-inrush-over-rating.js";
import { driverPulseHeating } from "./dimming/driver-pulse-heating.js";
import { driverStopsWhenDimmed } from "./dimming/driver-stops-when-dimmed.js";
import { flickerRisk } from "./dimming/flicker-risk.js";
import { loadReadingsContradict } from "./dimming/load-readings-contradict.js";
import { mixedCircuit } from "./dimming/mixed-circuit.js";
import { ownSwitchOnDimmed } from "./dimming/own-switch-on-dimmed.js";
import { steadyLoadOnDimBlock } from "./dimming/steady-load-on-dim-block.js";
import { wishAgainstLoad } from "./dimming/wish-against-load.js";
import { figuresContradict } from "./doubt/figures-contradict.js";
import { dropOverLimit } from "./drop/drop-over-limit.js";
import { feederDropOverLimit } from "./drop/feeder-drop-over-limit.js";
import { noOperatingPoint } from "./drop/no-operating-point.js";
import { voltageOverMaximum } from "./drop/voltage-over-maximum.js";
import { voltageUnderMinimum } from "./drop/voltage-under-minimum.js";
import { batteryFigureImpossible } from "./endurance/battery-figure-impossible.js";
import { batteryFiguresMissing } from "./endurance/battery-figures-missing.js";
import { exponentAssumed } from "./endurance/exponent-assumed.js";
import { flatInStorage } from "./endurance/flat-in-storage.js";
import { hoursBelowWanted } from "./endurance/hours-below-wanted.js";
import { profileFaulty } from "./endurance/profile-faulty.js";
import { continuousLoadOverFuse } from "./fuse/continuous-load-over-fuse.js";
import { fuseOverChannel } from "./fuse/fuse-over-channel.js";
import { fuseOverConductor } from "./fuse/fuse-over-conductor.js";
import { fuseOverLoadLimit } from "./fuse/fuse-over-load-limit.js";
import { fuseOverTail } from "./fuse/fuse-over-tail.js";
import { fuseRatingNonstandard } from "./fuse/fuse-rating-nonstandard.js";
import { fuseTypeWrong } from "./fuse/fuse-type-wrong.js";
import { loadOverFuse } from "./fuse/load-over-fuse.js";
import { circuitUnverified } from "./labels/circuit-unverified.js";
import { labelContradictsLoads } from "./labels/label-contradicts-loads.js";
import { labelMissing } from "./labels/label-missing.js";
import { spareFuseFitted } from "./labels/spare-fuse-fitted.js";
import { bondingUnderMinimum } from "./safety/bonding-under-minimum.js";
import { detectorOnSwitchedChannel } from "./safety/detector-on-switched-channel.js";
import { moduleDead } from "./safety/module-dead.js";
import { severalSuppliesOneIsolation } from "./safety/several-supplies-one-isolation.js";
import { supplyWithoutIsolation } from "./safety/supply-without-isolation.js";
import { networkTooLong } from "./supply/network-too-long.js";
import { noSupply } from "./supply/no-supply.js";
import { supplyVoltageOdd } from "./supply/supply-voltage-odd.js";
import { terminationWrong } from "./supply/termination-wrong.js";
import { faultNotCleared } from "./time-current/fault-not-cleared.js";
import { faultOverConductor } from "./time-current/fault-over-conductor.js";
import { faultOverTail } from "./time-current/fault-over-tail.js";
import { inrushOverFuse } from "./time-current/inrush-over-fuse.js";
import { interruptUnderFault } from "./time-current/interrupt-under-fault.js";
import { notSelective } from "./time-current/not-selective.js";
import { busbarOverRating } from "./totals/busbar-over-rating.js";
import { channelOverRating } from "./totals/channel-over-rating.js";
import { feederOverAmpacity } from "./totals/feeder-over-ampacity.js";
import { feederOverDevice } from "./totals/feeder-over-device.js";
import { moduleOverRating } from "./totals/module-over-rating.js";
import { relayContactDerating } from "./totals/relay-contact-derating.js";
import { fuseRatingMissing } from "./unknowns/fuse-rating-missing.js";
import { insulationUnknown } from "./unknowns/insulation-unknown.js";
import { kindMissing } from "./unknowns/kind-missing.js";
import { kindRatingMissing } from "./unknowns/kind-rating-missing.js";
import { loadClassMissing } from "./unknowns/load-class-missing.js";
import { loadCurrentMissing } from "./unknowns/load-current-missing.js";
import { nominalVoltageAssumed } from "./unknowns/nominal-voltage-assumed.js";
import { policyMemoryFigure } from "./unknowns/policy-memory-figure.js";
import { surveyCellUnread } from "./unknowns/survey-cell-unread.js";
import { wireGaugeMissing } from "./unknowns/wire-gauge-missing.js";
import { wireLengthMissing } from "./unknowns/wire-length-missing.js";

/** Every rule, in the order of the codes. A rule that is not here is not asked. */
export const ALL_RULES: readonly Rule[] = [
  duplicateId,
  danglingReference,
  channelClaimedTwice,
  channelOutOfRange,
  loadClaimedTwice,
  loadNotFed,
  wireToNowhere,
  lengthNotPositive,
  ratingNotPositive,
  toleranceOverValue,
  feedWithoutPath,
  cablesFormLoop,
  dimBlockOutOfRange,
  duplicateAddress,
  addressUnknown,
  addressOutOfRange,
  addressNotAsProgrammed,
  addressNotShownBySwitches,
  bankCodeMissing,
  bankCodeFaulty,
  optionSettingUnknown,
  networkAddressNotOnRecord,
  fuseOverConductor,
  fuseOverTail,
  fuseOverChannel,
  fuseOverLoadLimit,
  loadOverFuse,
  continuousLoadOverFuse,
  fuseRatingNonstandard,
  fuseTypeWrong,
  inrushOverFuse,
  faultNotCleared,
  faultOverConductor,
  faultOverTail,
  notSelective,
  interruptUnderFault,
  protectionMissing,
  protectionFarFromSource,
  feederDeviceOverConductor,
  conductorUnderMinimum,
  returnMissing,
  sharedReturnPoor,
  groundResistanceHigh,
  channelOverRating,
  relayContactDerating,
  moduleOverRating,
  feederOverAmpacity,
  feederOverDevice,
  busbarOverRating,
  dropOverLimit,
  feederDropOverLimit,
  voltageUnderMinimum,
  voltageOverMaximum,
  noOperatingPoint,
  steadyLoadOnDimBlock,
  mixedCircuit,
  dimmedLoadNotSuited,
  dimmedChannelOverRating,
  flickerRisk,
  wishAgainstLoad,
  ownSwitchOnDimmed,
  driverInrushOverRating,
  driverPulseHeating,
  driverStopsWhenDimmed,
  dimsNotDeep,
  classGuessed,
  loadReadingsContradict,
  detectorOnSwitchedChannel,
  supplyWithoutIsolation,
  severalSuppliesOneIsolation,
  bondingUnderMinimum,
  moduleDead,
  labelContradictsLoads,
  labelMissing,
  spareFuseFitted,
  circuitUnverified,
  noSupply,
  supplyVoltageOdd,
  terminationWrong,
  networkTooLong,
  batteryFiguresMissing,
  batteryFigureImpossible,
  exponentAssumed,
  profileFaulty,
  flatInStorage,
  hoursBelowWanted,
  figuresContradict,
  fuseRatingMissing,
  wireGaugeMissing,
  wireLengthMissing,
  insulationUnknown,
  loadCurrentMissing,
  loadClassMissing,
  kindMissing,
  kindRatingMissing,
  nominalVoltageAssumed,
  surveyCellUnread,
  policyMemoryFigure,
];
