import type { Basis } from "./basis.js";
import { takeMarks } from "./read-marks.js";
import { NUMBER_PATTERN, readNumber } from "./read-number.js";
import { LONGEST_TEXT, plainText } from "./read-text.js";
import { round } from "./round.js";
import { BASE_UNIT, type Dimension, dimensionWritten, SMALLER, UNITS, type Unit, unitWritten } from "./units.js";

export type UnreadCode =
  | "empty"
  | "too-long"
  | "not-a-number"
  | "ambiguous-number"
  | "unit-missing"
  | "unit-unknown"
  | "ambiguous-unit"
  | "wrong-dimension"
  | "part-too-large"
  | "range-backwards"
  | "negative"
  | "out-of-range"
  | "counted"
  | "alternating";

export interface Unread {
  readonly kind: "unread";
  readonly code: UnreadCode;
  readonly why: string;
  readonly asWritten: string;
  /** The dimension that its unit belongs to, where that is another one. */
  readonly looksLike?: Dimension;
}

/** A quantity read: `value` in the record's own unit (A, W, V, m, mm2, ohm, C, Ah, s, Hz). */
export interface ReadQuantity {
  readonly kind: "read";
  readonly value: number;
  /** The unit as it was written, or the one taken where none was. */
  readonly unit: string;
  /** True where no unit was written. */
  readonly isUnitTaken: boolean;
  readonly asWritten: string;
  /** Half-width, from a range or a plus-or-minus, in the record's own unit. */
  readonly plusMinus?: number;
  /** How it is said to be known: "(measured)", "~", "about", a question mark. */
  readonly basis?: Basis;
}

export interface ReadOptions {
  /** The unit that a number without one is in. A length, a temperature and a time have none of their own: 18 may be feet or metres. */
  readonly bareUnit?: string;
}

type Fault = Pick<Unread, "code" | "why" | "looksLike">;
const fault = (code: UnreadCode, why: string, looksLike?: Dimension): Fault =>
  looksLike === undefined ? { code, why } : { code, why, looksLike };
const isFault = (of: object): of is Fault => "code" in of;

interface Part {
  readonly value: number;
  readonly unit: Unit | undefined;
}

const NEEDS_UNIT: ReadonlySet<Dimension> = new Set(["length", "temperature", "time"]);
const MAY_BE_NEGATIVE: ReadonlySet<Dimension> = new Set(["current", "voltage", "temperature"]);
const LARGEST = 1e9;

const PAIR = new RegExp(
  `^(-?) ?(${NUMBER_PATTERN}) ?-?((?: ?[^\\d\\s.,][^\\d"']*?|["'])?(?:\\^? ?2(?![\\d.,]))?)(?= ?-? ?[.,]?\\d|$)`,
);

const unitOf = (written: string, dimension: Dimension): Unit | Fault => {
  const plain = written
    .trim()
    .replace(/ ?(?:dc|d\.c\.)$/i, "")
    .trim();
  const unit = unitWritten(plain, dimension);
  if (unit !== undefined) return unit;
  if (dimension === "resistance" && /^m ?ohms?$/i.test(plain))
    return fault("ambiguous-unit", `${plain} may be thousandths or millions of an ohm: write mOhm or MOhm`);
  if (/(?:^| )?(?:vac|aac|ac|a\.c\.)$/i.test(plain) && /^(?:v|a|w|k)?(?:olts?|mps?|atts?)? ?a\.?c\.?$/i.test(plain))
    return fault("alternating", `${plain} is alternating current: mains is outside this record`);
  if (/^x(?: |$)/i.test(plain))
    return fault("counted", "a number of pieces and the figure of one: they are two figures");
  const other = dimensionWritten(plain);
  return other === undefined
    ? fault("unit-unknown", `${plain} is not a unit of ${dimension}`)
    : fault("wrong-dimension", `${plain} is a unit of ${other}, not of ${dimension}`, other);
};

/** "4k7", "4R7", "0R1": the letter stands where the decimal mark would. */
const letterForMark = (text: string): string => text.replace(/^(\d+)([kKrR])(\d+)$/, "$1.$3$2");

/** One quantity, of one part or two: 15A, 5' 6 1/2". */
const partsOf = (text: string, dimension: Dimension): Part[] | Fault => {
  const parts: Part[] = [];
  let rest = dimension === "resistance" ? letterForMark(text) : text;
  while (rest !== "") {
    const found = PAIR.exec(rest);
    if (found === null || (parts.length > 0 && found[1] === "-"))
      return fault("not-a-number", `${text} is not a number with a unit`);
    const number = readNumber(found[2]!);
    if (number.kind === "unread") return number;
    const written = found[3]!.trim();
    const unit = written === "" ? undefined : unitOf(written, dimension);
    if (unit !== undefined && isFault(unit)) return unit;
    parts.push({ value: found[1] === "-" ? -number.value : number.value, unit });
    rest = rest.slice(found[0].length).trim();
    if (parts.length > 2) return fault("not-a-number", `${text} is more than one quantity`);
  }
  return parts.length === 0 ? fault("not-a-number", `${text} is not a number`) : parts;
};

/** 5 ft and 6 in as one part in feet; the smaller part must be less than one of the larger. */
const joined = (parts: readonly Part[], text: string): Part | Fault => {
  const [large, small] = parts as readonly [Part, Part | undefined];
  if (small === undefined) return large;
  const smaller = large.unit === undefined ? undefined : SMALLER[large.unit.name];
  if (smaller === undefined || (small.unit !== undefined && small.unit.name !== smaller[0]))
    return fault("not-a-number", `${text} is more than one quantity`);
  if (!Number.isInteger(large.value)) return fault("not-a-number", `${text} has a fraction in both of its parts`);
  if (small.value >= smaller[1])
    return fault(
      "part-too-large",
      `${text}: ${small.value} ${smaller[0]} is ${smaller[1]} or more, so the two parts do not fit together`,
    );
  const share = small.value / smaller[1];
  return { value: large.value < 0 ? large.value - share : large.value + share, unit: large.unit };
};

const sideOf = (text: string, dimension: Dimension): Part | Fault => {
  const parts = partsOf(text.trim(), dimension);
  return isFault(parts) ? parts : joined(parts, text.trim());
};

const isNothing = (value: number, dimension: Dimension): boolean => value === 0 && dimension !== "temperature";

const taken = (value: number, dimension: Dimension, options: ReadOptions, text: string): Unit | Fault => {
  const name =
    options.bareUnit ?? (NEEDS_UNIT.has(dimension) && !isNothing(value, dimension) ? undefined : BASE_UNIT[dimension]);
  const unit = UNITS.find((one) => one.dimension === dimension && one.name === name);
  return unit ?? fault("unit-missing", `${text} has no unit, and a ${dimension} may be in several`);
};

/** To twelve digits, which is more than anyone writes: 350 mA is 0.35 A and not 0.35000000000000003 A. */
const inBase = (value: number, unit: Unit): number => round(value * unit.factor + (unit.offset ?? 0), 12);

interface Read {
  readonly value: number;
  readonly unit: Unit;
  readonly isUnitTaken: boolean;
  readonly plusMinus?: number;
}

const single = (part: Part, dimension: Dimension, options: ReadOptions, text: string): Read | Fault => {
  const unit = part.unit ?? taken(part.value, dimension, options, text);
  if (isFault(unit)) return unit;
  return { value: inBase(part.value, unit), unit, isUnitTaken: part.unit === undefined };
};

const RANGE = /^(.*?[^-\s]) ?(?:-|\bto\b|\.{2,3}) ?(-?[\d.,].*)$/;

/** 2-3A, 2 A to 3 A, 10..12 V: the middle, and half the width. */
const range = (text: string, dimension: Dimension, options: ReadOptions): Read | Fault | undefined => {
  const ends = RANGE.exec(text.replace(/^-/, "\u0000"));
  if (ends === null) return undefined;
  const [from, to] = [sideOf(ends[1]!.replace("\u0000", "-"), dimension), sideOf(ends[2]!, dimension)];
  if (isFault(from)) return from;
  if (isFault(to)) return to;
  const high = single(to, dimension, options, text);
  if (isFault(high)) return high;
  const lowValue = inBase(from.value, from.unit ?? high.unit);
  if (lowValue > high.value)
    return fault("range-backwards", `${text} runs backwards: is it a range, or was a decimal mark meant?`);
  return { ...high, value: round((lowValue + high.value) / 2, 12), plusMinus: round((high.value - lowValue) / 2, 12) };
};

/** 3.1 ± 0.1 A, 3.1 A ± 2 %. */
const plusOrMinus = (text: string, dimension: Dimension, options: ReadOptions): Read | Fault | undefined => {
  const at = text.indexOf("±");
  if (at < 0) return undefined;
  const percent = /^ ?([\d.,]+) ?%$/.exec(text.slice(at + 1));
  const centre = sideOf(text.slice(0, at), dimension);
  if (isFault(centre)) return centre;
  if (percent !== null) {
    const share = readNumber(percent[1]!);
    const read = single(centre, dimension, options, text);
    if (isFault(read) || share.kind === "unread")
      return isFault(read)
        ? read
        : fault(share.kind === "unread" ? share.code : "not-a-number", `${text} is not a number`);
    return { ...read, plusMinus: round((Math.abs(read.value) * share.value) / 100, 12) };
  }
  const half = sideOf(text.slice(at + 1), dimension);
  if (isFault(half)) return half;
  if (half.value < 0) return fault("negative", `${text}: what follows the plus-or-minus cannot be negative`);
  const read = single({ value: centre.value, unit: centre.unit ?? half.unit }, dimension, options, text);
  if (isFault(read)) return read;
  return { ...read, plusMinus: round(half.value * (half.unit ?? read.unit).factor, 12) };
};

/** "18 ft (5.49 m)": the same quantity in the other unit, as `showQuantity` writes it; it is dropped where it reads as one. */
const withoutOtherUnit = (text: string, dimension: Dimension): string => {
  const both = /^([^()]+) ?\(([^()]+)\)$/.exec(text);
  if (both === null) return text;
  const other = sideOf(both[2]!, dimension);
  return isFault(other) || other.unit === undefined ? text : both[1]!.trim();
};

const read = (text: string, dimension: Dimension, options: ReadOptions): Read | Fault => {
  const tidy = withoutOtherUnit(text, dimension)
    .replace(/^(-?[\d.,/ ]+(?:'|ft\.?|feet|foot)) ?- ?(?=\d[\d.,/ ]*(?:"|in))/i, "$1 ")
    .replace(/(\d) ?-(?=[a-zA-Z°])/g, "$1 ");
  const spread = plusOrMinus(tidy, dimension, options) ?? range(tidy, dimension, options);
  if (spread !== undefined) return spread;
  const part = sideOf(tidy, dimension);
  return isFault(part) ? part : single(part, dimension, options, tidy);
};

/**
 * What quantity is written here? Reads what people write: `15A`, `.35 amps`, `2,5 mm2`, `5'6"`, `4k7`, `86F`, ranges (`2-3A`: the middle and half
 * the width), `3.1 ± 0.1 A`, `~3A` (basis assumed), `3.1 A (measured)`. What may mean two things is unread, with why: `1,000`, `18` as a length.
 */
export const readQuantity = (text: string, dimension: Dimension, options: ReadOptions = {}): ReadQuantity | Unread => {
  const asWritten = text;
  const no = (of: Fault): Unread => ({ kind: "unread", ...of, asWritten });
  if (text.length > LONGEST_TEXT) return no(fault("too-long", "this is longer than any quantity"));
  const { rest, basis } = takeMarks(plainText(text));
  if (rest === "") return no(fault("empty", "nothing is written"));
  const found = read(rest, dimension, options);
  if (isFault(found)) return no(found);
  if (found.value < 0 && !MAY_BE_NEGATIVE.has(dimension))
    return no(fault("negative", `${rest}: a ${dimension} cannot be negative`));
  if (Math.abs(found.value) > LARGEST || !Number.isFinite(found.plusMinus ?? 0))
    return no(fault("out-of-range", `${rest} is beyond anything in a coach`));
  return {
    kind: "read",
    value: found.value,
    unit: found.unit.name,
    isUnitTaken: found.isUnitTaken,
    asWritten,
    ...(found.plusMinus === undefined ? {} : { plusMinus: found.plusMinus }),
    ...(basis === undefined ? {} : { basis }),
  };
};
