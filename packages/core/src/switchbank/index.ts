export { addressCodeFaults } from "./address-code-faults.js";
export type { BankFault } from "./bank-fault.js";
export {
  type BankReading,
  type BankWish,
  bankPositions,
  type ClaimedBy,
  readBank,
  type SwitchClaim,
  settingFor,
} from "./bank-positions.js";
export { checkFound, type FoundCheck } from "./check-found.js";
export { type AddressedModule, type CoachAddresses, gapsAndDuplicates } from "./coach-addresses.js";
export { decodeAddress, positionAt, possibleAddresses } from "./decode-address.js";
export { addressesOf, encodeAddress, type SwitchPosition } from "./encode-address.js";
export { evidenceOfKind, type KindEvidence } from "./infer/evidence-of-kind.js";
export { inferCode } from "./infer/infer-code.js";
export type {
  Coding,
  Conflict,
  Inference,
  InferOptions,
  Installed,
  NextLook,
  Prediction,
  RuleFamily,
  Sample,
  WeightsCode,
} from "./infer/inference.js";
export { readOption } from "./read-option.js";
export { validateBank } from "./validate-bank.js";
