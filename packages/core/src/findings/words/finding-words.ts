import type { UnitChoice } from "../../quantity/index.js";
import type { FindingCode } from "../codes.js";
import type { Finding, SettledBy } from "../finding.js";
import { ALL_RULES } from "../rules/all-rules.js";
import { ADDRESS_WORDS } from "./address-words.js";
import { CONDUCTOR_WORDS } from "./conductor-words.js";
import { CONSISTENCY_WORDS } from "./consistency-words.js";
import { DIMMING_WORDS } from "./dimming-words.js";
import { DOUBT_WORDS } from "./doubt-words.js";
import { DROP_WORDS } from "./drop-words.js";
import { ENDURANCE_WORDS } from "./endurance-words.js";
import { fieldWords } from "./field-words.js";
import { FUSE_WORDS } from "./fuse-words.js";
import { LABEL_WORDS } from "./label-words.js";
import { SAFETY_WORDS } from "./safety-words.js";
import { type Speaker, sayOf } from "./say.js";
import { SUPPLY_WORDS } from "./supply-words.js";
import { TIME_CURRENT_WORDS } from "./time-current-words.js";
import { TOTALS_WORDS } from "./totals-words.js";
import { UNKNOWN_WORDS } from "./unknown-words.js";

/** Every code's words. A code without words does not compile. */
const WORDS: Readonly<Record<FindingCode, Speaker>> = {
  ...CONSISTENCY_WORDS,
  ...ADDRESS_WORDS,
  ...FUSE_WORDS,
  ...TIME_CURRENT_WORDS,
  ...CONDUCTOR_WORDS,
  ...TOTALS_WORDS,
  ...DROP_WORDS,
  ...DIMMING_WORDS,
  ...SAFETY_WORDS,
  ...LABEL_WORDS,
  ...SUPPLY_WORDS,
  ...ENDURANCE_WORDS,
  ...DOUBT_WORDS,
  ...UNKNOWN_WORDS,
};

const ASKS: ReadonlyMap<FindingCode, string> = new Map(ALL_RULES.map((rule) => [rule.code, rule.asks]));

export interface FindingWords {
  /** What is wrong; "Not settled: ..." while it is open; the question asked where it holds. */
  readonly title: string;
  /** Where, what is wanted, what was got. */
  readonly statement: string;
  /** What to do next. */
  readonly remedy: string;
}

/** A reading as an instruction: instrument, what to read, about how long with opening the place. */
export const settledByWords = (reading: SettledBy): string => {
  const how: Readonly<Record<SettledBy["instrument"], string>> = {
    "clamp meter": "Clamp",
    voltmeter: "Measure",
    ohmmeter: "Measure",
    "tape measure": "Measure",
    thermometer: "Measure",
    look: "Look at",
    ask: "Ask for",
  };
  return `${how[reading.instrument]} ${fieldWords(reading.path)} (${reading.instrument === "look" || reading.instrument === "ask" ? "" : `${reading.instrument}, `}about ${Math.round(reading.minutes)} min)`;
};

/** The words of a finding: heading, statement, what to do next. `units` as the reader wants them. */
export function findingWords(finding: Finding, units: UnitChoice): FindingWords {
  const { title, wanted, got, remedy, whileOpen, isQuestion } = WORDS[finding.code](sayOf(finding, units));
  const first = finding.settledBy[0];
  const isUnsettled = finding.verdict === "open" && isQuestion !== true;
  const doubt = isUnsettled ? "; not known well enough to decide" : "";
  const heading = isUnsettled ? `Not settled: ${title.charAt(0).toLowerCase()}${title.slice(1)}` : title;
  const statement = `${finding.subject.name}: wanted ${wanted}, got ${got}${doubt}`;
  const settle = whileOpen ?? (first === undefined ? remedy : settledByWords(first));
  return {
    title: finding.verdict === "holds" ? `Holds: ${ASKS.get(finding.code) ?? title}` : heading,
    statement,
    remedy: { holds: "Nothing to do", fails: remedy, open: settle }[finding.verdict],
  };
}

/** The whole finding in one line: where, what is wanted, got what; what to do next [code]. */
export function findingLine(finding: Finding, units: UnitChoice): string {
  const { statement, remedy } = findingWords(finding, units);
  return `${statement}; ${remedy.charAt(0).toLowerCase()}${remedy.slice(1)} [${finding.code}]`;
}
