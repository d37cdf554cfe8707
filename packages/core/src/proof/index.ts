export { methodWords } from "./asks.js";
export { judge } from "./judge.js";
export { type MovedWires, movedByPlan, movedOnRecord } from "./moved-wires.js";
export {
  JUDGED_CODES,
  type Judged,
  type JudgedCode,
  type ProofReport,
  TEST_KINDS,
  type Test,
  type TestKind,
} from "./proof.js";
export { testsOf } from "./tests-of.js";
export { proofWords, testKindWords, testWords } from "./words.js";
