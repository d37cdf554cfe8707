export { type CoachIndex, type Collection, indexRecord } from "./index-of.js";
export { DEFAULT_POLICY, type FullPolicy, policyOf } from "./policy.js";
export { FORMAT, type ReadOutcome, readRecord, type SchemaFault } from "./read.js";
export { LOAD_CLASSES, WISHES } from "./schema/circuit.js";
export { type NotedText, textValue } from "./schema/figure.js";
export type * from "./schema/ids.js";
export { coachRecord } from "./schema/record.js";
export { CHEMISTRIES, FUSE_TYPES, NODE_KINDS, SUPPLY_KINDS } from "./schema/supply.js";
export type * from "./schema/types.js";
