import type { Basis } from "./basis.js";
import { gaugeNumber, gaugeSize } from "./gauge.js";
import { takeMarks } from "./read-marks.js";
import { type ReadOptions, readQuantity, type Unread, type UnreadCode } from "./read-quantity.js";
import { LONGEST_TEXT, plainText } from "./read-text.js";

/** A conductor size as written. `size` is "14", "1/0" or, for mm2, the number of square millimetres. */
export interface ReadGauge {
  readonly kind: "read";
  readonly system: "awg" | "sae" | "mm2";
  readonly size: string;
  /** False where the text says only "gauge" or a number sign: AWG or SAE is then the policy's to say. */
  readonly isSystemStated: boolean;
  /** For mm2: the section itself. */
  readonly sectionMm2?: number;
  /** "14/2" and "2 x 1.5 mm2" are cables of two such conductors. */
  readonly conductors?: number;
  readonly asWritten: string;
  readonly basis?: Basis;
}

export interface GaugeOptions {
  /** What a bare number is, and what "gauge" alone means. Without it a bare number is unread. */
  readonly bareIs?: ReadGauge["system"];
}

const GAUGE_WORD = "(?:a\\.?w\\.?g\\.?|sae|gauge|gage|ga\\.?|g)";
const SIZE = "(\\d{1,2}|0{1,4}|[1-4]/0)";
const FORMS: readonly RegExp[] = [
  new RegExp(
    `^(?<word>#|no\\.? ?|nr\\.? ?|number )?${SIZE}(?:[/x](?<conductors>[1-9]\\d?))?(?: ?-? ?(?<after>${GAUGE_WORD}))?$`,
    "i",
  ),
  new RegExp(`^(?<before>${GAUGE_WORD}) ?#? ?-?${SIZE}(?:[/x](?<conductors>[1-9]\\d?))?$`, "i"),
];
/** Words beside the size that do not change it. */
const HARMLESS = /\b(?:wire|cable|stranded|str|solid|copper|cu|tinned|primary|conductor)\b\.?/gi;
const LEAST_MM2 = 0.05;
const MOST_MM2 = 1000;

const metric = (text: string, options: ReadOptions): Pick<ReadGauge, "sectionMm2" | "conductors"> | Unread => {
  const many = /^(\d{1,2}) ?(?:x|g) ?(?=[\d.,])/i.exec(text);
  const found = readQuantity(many === null ? text : text.slice(many[0].length), "section", options);
  if (found.kind === "unread") return found;
  return { sectionMm2: found.value, ...(many === null ? {} : { conductors: Number(many[1]) }) };
};

/**
 * Which conductor size is written here? `14ga`, `14 AWG`, `#14`, `AWG 14`, `14 SAE`, `1/0`, `4/0 AWG`, `2.5mm²`, `2.5sq`, `14/2` (two conductors).
 * A bare `14` is read only where the caller says what it is. `2.5 mm` is unread: a section is in mm2, and in mm it may be a diameter.
 */
export const readGauge = (text: string, options: GaugeOptions = {}): ReadGauge | Unread => {
  const asWritten = text;
  const no = (code: UnreadCode, why: string): Unread => ({ kind: "unread", code, why, asWritten });
  if (text.length > LONGEST_TEXT) return no("too-long", "this is longer than any wire size");
  const marks = takeMarks(plainText(text));
  const basis = marks.basis === undefined ? {} : { basis: marks.basis };
  const rest = marks.rest.replace(HARMLESS, " ").replace(/\s+/g, " ").trim();
  if (rest === "") return no("empty", "nothing is written");
  const form = FORMS.map((one) => one.exec(rest)).find((one) => one !== null);
  if (form && !(options.bareIs === "mm2" && /^\d+$/.test(rest))) {
    const size = form.slice(1).find((part) => part !== undefined && gaugeNumber(part) !== undefined) ?? "";
    return gaugeFrom(rest, size, form.groups ?? {}, options, asWritten, basis);
  }
  if (/^\d+\/\d+/.test(rest)) return no("out-of-range", `${rest} is not a gauge size`);
  if (/^\d+-\d+(?: ?[a-z]+)?$/i.test(rest))
    return no(
      "ambiguous-number",
      `${rest} may be a cable of several conductors or a range of sizes: write 14/2 or one size`,
    );
  if (/^[\d.,]+ ?mm$/i.test(rest)) return no("ambiguous-unit", `${rest} may be a diameter: a section is in mm2`);
  const isBare = /^[\d.,]+$/.test(rest);
  if (isBare && options.bareIs !== "mm2")
    return no("unit-missing", `${rest} alone may be a gauge or square millimetres: write 14 AWG or 2.5 mm2`);
  const found = metric(rest, {});
  if ("kind" in found) return { ...found, asWritten };
  const sectionMm2 = found.sectionMm2 ?? 0;
  if (sectionMm2 < LEAST_MM2 || sectionMm2 > MOST_MM2) return no("out-of-range", `${rest} is no wire of a coach`);
  return {
    kind: "read",
    system: "mm2",
    size: String(sectionMm2),
    isSystemStated: !isBare,
    ...found,
    sectionMm2,
    asWritten,
    ...basis,
  };
};

const gaugeFrom = (
  rest: string,
  size: string,
  groups: Readonly<Record<string, string | undefined>>,
  options: GaugeOptions,
  asWritten: string,
  basis: { readonly basis?: Basis },
): ReadGauge | Unread => {
  const number = gaugeNumber(size);
  if (number === undefined)
    return { kind: "unread", code: "out-of-range", why: `${rest} is not a gauge size`, asWritten };
  const word = (groups.before ?? groups.after ?? "").toLowerCase().replace(/\./g, "");
  const stated = word === "awg" || word === "sae" ? word : undefined;
  const isPlain = word === "" && groups.word === undefined && !/\/|00/.test(rest);
  if (isPlain && options.bareIs === undefined)
    return {
      kind: "unread",
      code: "unit-missing",
      why: `${rest} alone may be a gauge or square millimetres: write 14 AWG or 2.5 mm2`,
      asWritten,
    };
  const unstated = options.bareIs === "sae" ? "sae" : "awg";
  return {
    kind: "read",
    system: stated ?? unstated,
    size: gaugeSize(number),
    isSystemStated: stated !== undefined,
    ...(groups.conductors === undefined ? {} : { conductors: Number(groups.conductors) }),
    asWritten,
    ...basis,
  };
};
