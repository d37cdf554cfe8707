import type { SurveyField } from "./fields.js";
import { readClass } from "./load-class.js";
import { isNo, isYes } from "./words.js";

/** The share of a column's filled cells that look like something, 0..1. */
export interface ContentSigns {
  readonly filled: number;
  readonly distinct: number;
  readonly share: (sign: Sign) => number;
}

const NUMBER = "[~<>]?\\s*\\d*[.,]?\\d+";
const SIGNS = {
  key: /^[a-z]{0,3}\s?\d{1,3}\s?[-./:]\s?(?:ch)?\d{1,2}$/i,
  fuseName: /^f\s?-?\d{1,3}$/i,
  moduleName: /^(?:m|mod|module|panel|#)\s?\.?\s?\d{1,2}$/i,
  bits: /^[01?]{3,16}$/,
  amps: new RegExp(`^${NUMBER}\\s*(?:a|amps?|ma)\\b`, "i"),
  watts: new RegExp(`^${NUMBER}\\s*(?:w|watts?)\\b`, "i"),
  volts: new RegExp(`^${NUMBER}\\s*(?:v|volts?)\\b`, "i"),
  length: new RegExp(`^${NUMBER}\\s*(?:ft|feet|'|′|m|metres?|meters?|in|"|″)`, "i"),
  gauge: /^#?\s*\d{1,2}(?:\/0)?\s*(?:awg|ga|gauge|sae)\b|^[\d.,]+\s*(?:mm2|mm²|sq)/i,
  number: new RegExp(`^${NUMBER}$`),
  whole: /^\d{1,2}$/,
  fuseSize: /^(?:1|2|3|4|5|7[.,]5|10|15|20|25|30|35|40|50|60)\s*(?:a|amps?)?\b/i,
  gaugeSize: /^(?:22|20|18|16|14|12|10|8|6|4|2)$/,
  words: /\p{L}{3}/u,
} as const;
type Sign = keyof typeof SIGNS | "yesNo" | "class";

const matches = (sign: Sign, text: string): boolean => {
  if (sign === "yesNo") return isYes(text) || isNo(text) || /\b(must|nice|maybe|steady)\b/i.test(text);
  if (sign === "class") return readClass(text) !== undefined;
  return SIGNS[sign].test(text);
};

const MAX_SAMPLE = 200;

/** Looks at the first filled cells of a column. */
export function signsOf(texts: readonly string[]): ContentSigns {
  const sample = texts
    .map((text) => text.trim())
    .filter((text) => text !== "")
    .slice(0, MAX_SAMPLE);
  return {
    filled: sample.length,
    distinct: new Set(sample).size,
    share: (sign) => (sample.length === 0 ? 0 : sample.filter((text) => matches(sign, text)).length / sample.length),
  };
}

/** Whether what stands in a column can be what its heading seems to say: 1 yes, 0 no, between in part. */
export function fitOf(field: SurveyField, signs: ContentSigns): number {
  if (signs.filled === 0) return 0.8;
  const { share } = signs;
  const figure = Math.max(share("number"), share("amps"), share("watts"), share("volts"), share("length"));
  switch (field) {
    case "fuseA":
      return share("fuseName") > 0.5 || share("key") > 0.5
        ? 0
        : Math.max(share("fuseSize"), share("amps"), share("number"));
    case "circuit":
      return Math.max(share("key"), share("fuseName"), share("whole") * 0.9, share("words") > 0.5 ? 0.3 : 0.6);
    case "channel":
      return Math.max(share("whole"), share("fuseName"), 0.4);
    case "currentA":
    case "powerW":
    case "ratedV":
    case "length":
    case "loopLength":
    case "returnLength":
    case "quantity":
    case "stallA":
      return Math.max(figure, share("words") > 0.8 ? 0.1 : 0.5);
    case "gauge":
      return Math.max(share("gauge"), share("number"), share("words") > 0.8 ? 0.1 : 0.6);
    case "class":
      return Math.max(share("class"), 0.5);
    case "loads":
    case "label":
      return Math.max(share("words"), figure > 0.6 ? 0.1 : 0.5);
    case "address":
      return Math.max(share("whole"), 0.5);
    default:
      return 1;
  }
}
