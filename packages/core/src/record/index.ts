export { applyDifference, differenceOf, type RecordChange } from "./difference.js";
export { faultText, type SchemaFault } from "./fault.js";
export {
  isSurveyField,
  isSurveyField,
  SURVEY_FIELDS,
  SURVEY_FIELDS,
  type SurveyField,
  type SurveyField,
} from "./import/fields.js";
export type { Cell as GridCell, Grid, GridWarning } from "./import/grid.js";
export { type Cell, type Grid, type GridWarning, NO_CELL } from "./import/grid.js";
export { type ImportOptions, importSurvey } from "./import/import-survey.js";
export { type ClassGuess, guessClass, readClass } from "./import/load-class.js";
export {
  type ColumnMapping,
  type ColumnMapping,
  overrideMapping,
  overrideMapping,
  proposeMapping,
  proposeMapping,
  type RememberedMapping,
  type RememberedMapping,
} from "./import/propose.js";
export type {
  ImportReport,
  ImportReport,
  ProposedClass,
  ProposedClass,
  Told,
  Told,
  UnreadCell,
  UnreadCell,
} from "./import/report.js";
export { type CoachIndex, type Collection, indexRecord } from "./index-of.js";
export { jsonSchemaOf } from "./json-schema.js";
export { type Migration, migrate } from "./migrations/migrate.js";
export { newRecord } from "./new-record.js";
export { openRecord } from "./open.js";
export { DEFAULT_POLICY, type FullPolicy, policyOf } from "./policy.js";
export { FORMAT, type ReadOutcome, readRecord } from "./read.js";
export { type DanglingReference, danglingReferences, type Reference, referencesOf } from "./references.js";
export { LOAD_CLASSES, WISHES } from "./schema/circuit.js";
export { type NotedText, textValue } from "./schema/figure.js";
export type * from "./schema/ids.js";
export { coachRecord } from "./schema/record.js";
export { CHEMISTRIES, FUSE_TYPES, NODE_KINDS, SUPPLY_KINDS } from "./schema/supply.js";
export type * from "./schema/types.js";
export { writeRecord } from "./write.js";
