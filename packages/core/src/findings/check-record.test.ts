import { describe, expect, it } from "vitest";
import { COMMON_PRACTICE, type Source } from "../quantity/index.js";
import { checkRecord } from "./check-record.js";
import { FINDING_CODES } from "./codes.js";
import { contextOf } from "./context-of.js";
import { defineRule } from "./define-rule.js";
import { SEVERITIES } from "./finding.js";
import { ALL_RULES } from "./rules/all-rules.js";
import { minutesFor, readingsThatSettle } from "./settle.js";
import { coachOf } from "./test-coach.js";

const MEMORY: Source = { id: "recalled", name: "a table recalled", how: "memory" };
const SUBJECT = { path: "coach", id: "test", name: "Test coach" };
const empty = contextOf(coachOf({}));

describe("the registry of rules", () => {
  it("has one rule for every code, in the order of the codes", () => {
    expect(ALL_RULES.map((rule) => rule.code)).toEqual([...FINDING_CODES]);
  });
  it("asks a question with every rule and names a source", () => {
    for (const rule of ALL_RULES) {
      expect(rule.asks).toMatch(/^[A-Z].*\?$/);
      expect(rule.source.name).not.toBe("");
    }
  });
  it("lets no rule that rests on memory raise a stop", () => {
    expect(ALL_RULES.filter((rule) => rule.source.how === "memory" && rule.severity === "stop")).toEqual([]);
  });
});

describe("the memory cap", () => {
  const said = { subject: SUBJECT, verdict: "fails" } as const;
  const severityOf = (source: Source, more: object = {}) =>
    defineRule({ code: "module-dead", asks: "?", severity: "stop", source }, () => [{ ...said, ...more }]).check(
      empty,
    )[0]?.severity;
  it("leaves a stop that rests on practice or on a text that was seen", () => {
    expect(severityOf(COMMON_PRACTICE)).toBe("stop");
    expect(severityOf({ ...MEMORY, how: "seen" })).toBe("stop");
  });
  it("turns a stop into a mend where the rule, the finding's own source or a further one is from memory", () => {
    expect(severityOf(MEMORY)).toBe("mend");
    expect(severityOf(COMMON_PRACTICE, { source: MEMORY })).toBe("mend");
    expect(severityOf(COMMON_PRACTICE, { alsoRestsOn: [MEMORY] })).toBe("mend");
    expect(defineRule({ code: "module-dead", asks: "?", severity: "stop", source: MEMORY }, () => []).severity).toBe(
      "mend",
    );
  });
  it("lets a rule that rests on memory raise anything less", () => {
    expect(severityOf(MEMORY, { severity: "watch" })).toBe("watch");
  });
});

describe("a rule", () => {
  it("breaks with a code where it raises more than it says it can", () => {
    const rule = defineRule({ code: "module-dead", asks: "?", severity: "watch", source: COMMON_PRACTICE }, () => [
      { subject: SUBJECT, verdict: "fails", severity: "stop" },
    ]);
    expect(() => rule.check(empty)).toThrow(/rule-too-grave/);
  });
  it("asks for a look at the subject where an open finding names no reading", () => {
    const rule = defineRule({ code: "module-dead", asks: "?", severity: "watch", source: COMMON_PRACTICE }, () => [
      { subject: SUBJECT, verdict: "open" },
    ]);
    expect(rule.check(empty)[0]?.settledBy).toMatchObject([{ path: "coach", instrument: "look" }]);
  });
});

describe("checkRecord", () => {
  const index = coachOf({
    modules: [{ id: "m1", isDead: true }],
    loads: [
      { id: "l1", name: "Gas detector", class: "detector" },
      { id: "l2", name: "Pump", class: "pump" },
    ],
    circuits: Array.from({ length: 12 }, (_, i) => ({
      id: `c${i}`,
      module: "m1",
      channel: i + 1,
      label: "",
      loads: i === 0 ? ["l1"] : ["l2"],
    })),
  });
  it("leaves out what holds unless it is asked for", () => {
    expect(checkRecord(index).some((f) => f.verdict === "holds")).toBe(false);
    expect(checkRecord(index, { includeHolds: true }).some((f) => f.verdict === "holds")).toBe(true);
  });
  it("sorts worst first, what fails before what is open, then by subject in the order of the record", () => {
    const found = checkRecord(index);
    expect(found[0]?.code).toBe("detector-on-switched-channel");
    const ranks = found.map((f) => SEVERITIES.indexOf(f.severity) * 2 + Number(f.verdict === "open"));
    expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
    const labels = found.filter((f) => f.code === "label-missing").map((f) => f.subject.id);
    expect(labels).toEqual(Array.from({ length: 12 }, (_, i) => `c${i}`));
  });
  it("names a reading for everything open", () => {
    for (const finding of checkRecord(index))
      if (finding.verdict === "open") expect(finding.settledBy.length).toBeGreaterThan(0);
  });
  it("says the same twice", () => {
    expect(checkRecord(index)).toEqual(checkRecord(index));
  });
  it("says of an empty record only that its supply is not known", () => {
    expect(checkRecord(coachOf({})).map((f) => f.code)).toEqual(["no-supply"]);
  });
});

describe("minutes of a reading", () => {
  const { index } = contextOf(
    coachOf({
      places: [
        { id: "bay", name: "Bay", accessMin: 3 },
        { id: "box", name: "Box in the bay", within: "bay", accessMin: 4 },
        { id: "loop", name: "Loop", within: "loop", accessMin: 1 },
      ],
    }),
  );
  it("opens the place and those it lies within, then reads: 4 + 3 + 2 for a voltmeter", () => {
    expect(minutesFor(index, "voltmeter", "box")).toBe(9);
    expect(minutesFor(index, "look", "loop")).toBe(2);
  });
  it("puts the cheapest unsure figure first and leaves out what was measured", () => {
    const settle = readingsThatSettle(index, [
      { path: "a", figure: { value: 1, basis: "measured" }, instrument: "look", place: "bay" },
      { path: "b", figure: 1, instrument: "tape measure", place: "bay" },
      { path: "c", figure: undefined, instrument: "look", place: "bay" },
    ]);
    expect(settle.map((reading) => `${reading.path} ${reading.minutes}`)).toEqual(["c 4", "b 8"]);
  });
});
