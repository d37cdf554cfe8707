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
import { protectionFarFromSource } from "./conductor/protection-far-from-source.js";
import { returnMissing } from "./conductor/return-missing.js";
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
import { wireToNowhere } from "./consistency/wire-to-nowhere.js";
import { dimmedChannelOverRating } from "./dimming/dimmed-channel-over-rating.js";
import { dimmedLoadNotSuited } from "./dimming/dimmed-load-not-suited.js";
import { flickerRisk } from "./dimming/flicker-risk.js";
import { mixedCircuit } from "./dimming/mixed-circuit.js";
import { steadyLoadOnDimBlock } from "./dimming/steady-load-on-dim-block.js";
import { wishAgainstLoad } from "./dimming/wish-against-load.js";
import { continuousLoadOverFuse } from "./fuse/continuous-load-over-fuse.js";
import { fuseOverChannel } from "./fuse/fuse-over-channel.js";
import { fuseOverLoadLimit } from "./fuse/fuse-over-load-limit.js";
import { fuseRatingNonstandard } from "./fuse/fuse-rating-nonstandard.js";
import { fuseTypeWrong } from "./fuse/fuse-type-wrong.js";
import { loadOverFuse } from "./fuse/load-over-fuse.js";
import { circuitUnverified } from "./labels/circuit-unverified.js";
import { labelContradictsLoads } from "./labels/label-contradicts-loads.js";
import { labelMissing } from "./labels/label-missing.js";
import { spareFuseFitted } from "./labels/spare-fuse-fitted.js";
import { detectorOnSwitchedChannel } from "./safety/detector-on-switched-channel.js";
import { moduleDead } from "./safety/module-dead.js";
import { severalSuppliesOneIsolation } from "./safety/several-supplies-one-isolation.js";
import { supplyWithoutIsolation } from "./safety/supply-without-isolation.js";
import { networkTooLong } from "./supply/network-too-long.js";
import { noSupply } from "./supply/no-supply.js";
import { supplyVoltageOdd } from "./supply/supply-voltage-odd.js";
import { terminationWrong } from "./supply/termination-wrong.js";
import { channelOverRating } from "./totals/channel-over-rating.js";
import { relayContactDerating } from "./totals/relay-contact-derating.js";
import { fuseRatingMissing } from "./unknowns/fuse-rating-missing.js";
import { insulationUnknown } from "./unknowns/insulation-unknown.js";
import { kindMissing } from "./unknowns/kind-missing.js";
import { kindRatingMissing } from "./unknowns/kind-rating-missing.js";
import { loadClassMissing } from "./unknowns/load-class-missing.js";
import { loadCurrentMissing } from "./unknowns/load-current-missing.js";
import { nominalVoltageAssumed } from "./unknowns/nominal-voltage-assumed.js";
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
  fuseOverChannel,
  fuseOverLoadLimit,
  loadOverFuse,
  continuousLoadOverFuse,
  fuseRatingNonstandard,
  fuseTypeWrong,
  protectionFarFromSource,
  returnMissing,
  channelOverRating,
  relayContactDerating,
  steadyLoadOnDimBlock,
  mixedCircuit,
  dimmedLoadNotSuited,
  dimmedChannelOverRating,
  flickerRisk,
  wishAgainstLoad,
  detectorOnSwitchedChannel,
  supplyWithoutIsolation,
  severalSuppliesOneIsolation,
  moduleDead,
  labelContradictsLoads,
  labelMissing,
  spareFuseFitted,
  circuitUnverified,
  noSupply,
  supplyVoltageOdd,
  terminationWrong,
  networkTooLong,
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
];
