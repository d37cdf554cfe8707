/** What a column of a survey can mean. The table in docs/method/survey-import.md says what each fills. */
export const SURVEY_FIELDS = [
  "circuit",
  "module",
  "channel",
  "moduleKind",
  "modulePlace",
  "address",
  "answersTo",
  "positions",
  "fuseA",
  "fuseType",
  "label",
  "loads",
  "class",
  "quantity",
  "currentA",
  "powerW",
  "ratedV",
  "stallA",
  "minV",
  "maxFuseA",
  "gauge",
  "length",
  "loopLength",
  "insulation",
  "bundle",
  "zone",
  "return",
  "returnGauge",
  "returnLength",
  "place",
  "wish",
  "verified",
  "notes",
  "unread",
] as const;
export type SurveyField = (typeof SURVEY_FIELDS)[number];

export const isSurveyField = (name: string): name is SurveyField => (SURVEY_FIELDS as readonly string[]).includes(name);

/** Fields that more than one column may fill. */
export const SHARED_FIELDS: ReadonlySet<SurveyField> = new Set(["notes", "unread"]);
