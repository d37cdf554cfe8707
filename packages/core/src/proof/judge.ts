import type { Finding } from "../findings/index.js";
import { containsSpan, type Span } from "../quantity/index.js";
import type { CoachIndex, Reading } from "../record/index.js";
import { meterSpan } from "./meter-span.js";
import type { Judged, JudgedCode, ProofReport, Test } from "./proof.js";
import { signingOf } from "./signing.js";
import { type Taken, takeReading } from "./take-reading.js";
import { becauseWords } from "./words.js";

type Usable = Exclude<Taken, { kind: "stray" }>;
interface Held {
  readonly reading: Reading;
  readonly taken: Usable;
}

/** Binary rounding at the edge of a span: one part in a thousand million, far below any meter. */
const SLACK_RATIO = 1e-9;

/**
 * Does the coach do what was predicted, test by test? A reading names its test in its field `test`. An amount holds where all that the meter may mean lies
 * within what was expected, fails where none of it does, and is open where it is partly so. Of several readings of one test the last by
 * `at` counts (without a date: before all dated ones; at one time: the later in the list). Readings that belong to no test are strays. Signing is refused while a
 * `stop` finding fails or a test fails; tests that stay unproved or open do not refuse it, they are listed. `findings`: `checkRecord(index)` if at hand.
 */
export function judge(
  tests: readonly Test[],
  readings: readonly Reading[],
  index: CoachIndex,
  findings?: readonly Finding[],
): ProofReport {
  const byId = new Map(tests.map((test) => [test.id, test]));
  const held = new Map<string, Held[]>();
  const strays: { reading: string; why: string }[] = [];
  for (const reading of readings) {
    const named = reading.test;
    const test = typeof named === "string" ? byId.get(named) : undefined;
    if (test === undefined) {
      const why = typeof named === "string" ? `There is no test ${named} on the sheet.` : "It names no test.";
      strays.push({ reading: reading.id, why });
      continue;
    }
    const taken = takeReading(test, reading, index);
    if (taken.kind === "stray") strays.push({ reading: reading.id, why: taken.why });
    else held.set(test.id, [...(held.get(test.id) ?? []), { reading, taken }]);
  }
  const judged = [...byId.values()].map((test) => judgeOne(test, held.get(test.id) ?? []));
  return {
    judged,
    unproved: judged.filter((each) => each.verdict === "unproved").map((each) => each.test.id),
    strays,
    ...signingOf(judged, index, findings),
  };
}

function judgeOne(test: Test, held: readonly Held[]): Judged {
  const inTime = held
    .map((each, place) => ({ ...each, place }))
    .sort((a, b) => compareText(a.reading.at ?? "", b.reading.at ?? "") || a.place - b.place);
  const last = inTime.at(-1);
  const say = (verdict: Judged["verdict"], code: JudgedCode, read?: Judged["read"]): Judged => {
    const found = {
      test,
      verdict,
      code,
      ...(read === undefined ? {} : { read }),
      ...(last === undefined ? {} : { reading: last.reading.id }),
      earlier: inTime.slice(0, -1).map((each) => each.reading.id),
    };
    return { ...found, because: becauseWords(found) };
  };
  const isExpected = test.needs.length === 0 && test.cannot === undefined;
  if (last === undefined) return say("unproved", isExpected ? "no-reading" : "nothing-expected");
  if (last.taken.kind === "said") {
    const read = { value: last.taken.value };
    if (!isExpected || !("said" in test.expected)) return say("unproved", "nothing-expected", read);
    return last.taken.value === test.expected.said.trim().toLowerCase()
      ? say("holds", "as-expected", read)
      : say("fails", "not-as-expected", read);
  }
  const span = meterSpan(last.taken.value, test.kind === "current" ? "A" : "V", last.reading.plusMinus);
  const read = { value: last.taken.value, span };
  if (!isExpected || !("span" in test.expected)) return say("unproved", "nothing-expected", read);
  return judgeSpan(say, test.expected.span, read);
}

function judgeSpan(
  say: (verdict: Judged["verdict"], code: JudgedCode, read: Judged["read"]) => Judged,
  expected: Span,
  read: { readonly value: number; readonly span: Span },
): Judged {
  const slack = SLACK_RATIO * Math.max(Math.abs(expected.lo), Math.abs(expected.hi));
  const wide: Span = { lo: expected.lo - slack, hi: expected.hi + slack };
  if (containsSpan(wide, read.span)) return say("holds", "within", read);
  if (read.span.hi < wide.lo || read.span.lo > wide.hi) return say("fails", "outside", read);
  return say("open", containsSpan(read.span, expected) ? "meter-too-coarse" : "partly-outside", read);
}

const compareText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
