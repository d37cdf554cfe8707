import { fieldWords } from "../findings/index.js";
import { type Span, showQuantity, type UnitChoice } from "../quantity/index.js";
import type { Judged, JudgedCode, Test } from "./proof.js";

const amount = (value: number, unit: "V" | "A", units: UnitChoice): string =>
  showQuantity(value, unit === "V" ? "voltage" : "current", units);

const range = (span: Span, unit: "V" | "A", units: UnitChoice): string =>
  `${amount(span.lo, unit, units)} to ${amount(span.hi, unit, units)}`;

const fieldsWords = (paths: readonly string[]): string =>
  [...new Set(paths)].map((path) => `${fieldWords(path)} (${path})`).join("; ");

/** What the sheet prints as expected: the middle figure and its span, a word, or what is missing. */
function expectedWords(test: Test, units: UnitChoice): string {
  if (test.cannot !== undefined) return `nothing can be expected: ${test.cannot}`;
  if (test.needs.length > 0) return `not known; wanted first: ${fieldsWords(test.needs)}`;
  const { expected } = test;
  if ("said" in expected) return test.kind === "address" ? `address ${expected.said}` : expected.said;
  const without = test.without === undefined ? "" : `; not counted: ${fieldsWords(test.without)}`;
  return `about ${amount(expected.nominal, expected.unit, units)}, from ${range(expected.span, expected.unit, units)}${without}`;
}

/** One line of the test sheet in words: what to do, and what is expected. */
export const testWords = (test: Test, units: UnitChoice): string =>
  `${test.asks} Expected: ${expectedWords(test, units)}.`;

type Found = Pick<Judged, "test" | "code" | "read">;

function readWords({ test, read }: Found, units: UnitChoice): string {
  if (read === undefined) return "nothing read";
  if (typeof read.value === "string") return test.kind === "address" ? `address ${read.value}` : `"${read.value}"`;
  const unit = test.kind === "current" ? "A" : "V";
  const meter = read.span === undefined ? "" : ` (the meter may mean ${range(read.span, unit, units)})`;
  return `${amount(read.value, unit, units)}${meter}`;
}

/** Why the verdict is what it is. A code without words does not compile. */
const BECAUSE: Readonly<Record<JudgedCode, (read: string, expected: string) => string>> = {
  within: (read, expected) => `Read ${read}; expected ${expected}: all of it lies within.`,
  outside: (read, expected) => `Read ${read}; expected ${expected}: none of it lies within.`,
  "partly-outside": (read, expected) =>
    `Read ${read}; expected ${expected}: it lies partly outside. Read again with a finer meter, or measure the figures the expectation rests on.`,
  "meter-too-coarse": (read, expected) =>
    `Read ${read}; expected ${expected}: they agree, but the meter is too coarse to prove it. Read with a finer meter and write down its accuracy.`,
  "as-expected": (read) => `Seen as expected: ${read}.`,
  "not-as-expected": (read, expected) => `Seen ${read}; expected ${expected}.`,
  "no-reading": (_, expected) => `Not read yet; expected ${expected}.`,
  "nothing-expected": (read, expected) => `Stays unproved, ${read}: ${expected}.`,
};

/** The sentence of a verdict in the units of a meter, which are the same everywhere. */
export const becauseWords = (found: Found, units: UnitChoice = "metric"): string =>
  BECAUSE[found.code](readWords(found, units), expectedWords(found.test, units));

const VERDICT_WORDS: Readonly<Record<Judged["verdict"], string>> = {
  holds: "holds",
  fails: "FAILS",
  open: "open",
  unproved: "unproved",
};

const KIND_WORDS: Readonly<Record<Test["kind"], string>> = {
  switches: "comes on and goes off",
  "voltage-at-load": "voltage at the load",
  current: "current",
  dims: "dims",
  "stays-steady": "stays steady",
  address: "address",
  lamp: "lamp",
  answers: "answers on its new channel",
  "always-fed": "always has power",
  "channel-dead": "old channel dead",
};

/** What a test is about, in a word or two, for a sheet that says once how each kind is done. */
export const testKindWords = (kind: Test["kind"]): string => KIND_WORDS[kind];

/** A judged test in one line: what, the verdict, why, and which earlier readings do not count. */
export function proofWords(judged: Judged, units: UnitChoice): string {
  const subject = judged.test.circuit ?? judged.test.module ?? judged.test.id;
  const earlier = judged.earlier.length === 0 ? "" : ` Earlier readings, not counted: ${judged.earlier.join(", ")}.`;
  return `${subject}, ${KIND_WORDS[judged.test.kind]}: ${VERDICT_WORDS[judged.verdict]}. ${becauseWords(judged, units)}${earlier}`;
}
