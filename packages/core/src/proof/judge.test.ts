import { describe, expect, it } from "vitest";
import type { Reading } from "../record/index.js";
import { JUDGED_CODES, proofWords, testWords } from "./index.js";
import { judge } from "./judge.js";
import type { Test } from "./proof.js";
import { circuitOn, lamp, smallCoach, wireOf } from "./small-coach.js";
import { testsOf } from "./tests-of.js";

const coach = smallCoach();
const tests = testsOf(coach);
const read = (test: string, more: object): Reading =>
  ({ id: `r-${test}`, test, kind: "voltage", ...more }) as unknown as Reading;
const report = (readings: readonly Reading[], of: readonly Test[] = tests) => judge(of, readings, coach, []);
const judgedOf = (test: string, more: object, of?: readonly Test[]) =>
  report([read(test, more)], of).judged.find((each) => each.test.id === test);
const verdictOf = (test: string, more: object, of?: readonly Test[]) => {
  const judged = judgedOf(test, more, of);
  return `${judged?.verdict} ${judged?.code}`;
};
const V = "t-c1-voltage-at-load";
const A = "t-c1-current";

describe("a reading of volts against 12.182 to 12.258 V", () => {
  it("holds, fails or is open as all, none or some of what the meter may mean lies within", () => {
    expect(verdictOf(V, { valueV: 12.22, plusMinus: 0.02 })).toBe("holds within");
    expect(verdictOf(V, { valueV: 12.16, plusMinus: 0.02 })).toBe("fails outside");
    expect(verdictOf(V, { valueV: 12.17, plusMinus: 0.02 })).toBe("open partly-outside");
    expect(verdictOf(V, { valueV: 12.3, plusMinus: 0.02 })).toBe("fails outside");
  });
  it("never lets a coarse meter prove anything", () => {
    expect(verdictOf(V, { valueV: 12.22, plusMinus: 5 })).toBe("open meter-too-coarse");
    // Half a percent and 10 mV of 12.22 V are 0.0711 V: 12.149 to 12.291 V.
    expect(verdictOf(V, { valueV: 12.22 })).toBe("open meter-too-coarse");
  });
  it("fails probes the wrong way round", () => {
    expect(verdictOf(V, { valueV: -12.22, plusMinus: 0.02 })).toBe("fails outside");
  });
});

describe("a clamp reading against 1.8 to 2.2 A, without a stated accuracy: 2 % and 0.05 A", () => {
  it("has its edges where the meter's doubt meets the span", () => {
    expect(verdictOf(A, { kind: "current", valueA: 2.105 })).toBe("holds within"); // up to 2.1971 A
    expect(verdictOf(A, { kind: "current", valueA: 2.11 })).toBe("open partly-outside"); // up to 2.2022 A
    expect(verdictOf(A, { kind: "current", valueA: 2.29 })).toBe("open partly-outside"); // down to 2.1942 A
    expect(verdictOf(A, { kind: "current", valueA: 2.3 })).toBe("fails outside"); // down to 2.204 A
  });
});

describe("the edge of a span", () => {
  const edge: Test = {
    id: "t-edge",
    kind: "current",
    asks: "?",
    expected: { span: { lo: 2, hi: 3 }, nominal: 2.5, unit: "A" },
    needs: [],
  };
  it("holds when the reading fills it exactly and is open when it only touches", () => {
    expect(verdictOf("t-edge", { kind: "current", valueA: 2.5, plusMinus: 0.5 }, [edge])).toBe("holds within");
    expect(verdictOf("t-edge", { kind: "current", valueA: 3.5, plusMinus: 0.5 }, [edge])).toBe("open partly-outside");
    expect(verdictOf("t-edge", { kind: "current", valueA: 3.51, plusMinus: 0.5 }, [edge])).toBe("fails outside");
  });
});

describe("what was said", () => {
  it("is compared by its meaning", () => {
    for (const said of ["yes", "OK.", " Works "])
      expect(verdictOf("t-c1-switches", { kind: "symptom", said })).toBe("holds as-expected");
    expect(verdictOf("t-c1-dims", { kind: "symptom", said: "No" })).toBe("fails not-as-expected");
  });
  it("is a stray where it is neither yes nor no", () => {
    expect(report([read("t-c1-dims", { kind: "symptom", said: "a bit" })]).strays[0]?.why).toContain('"a bit"');
  });
  it("compares an address as a number", () => {
    expect(verdictOf("t-m1-address", { kind: "address", address: 7 })).toBe("holds as-expected");
    expect(verdictOf("t-m1-address", { kind: "address", address: 8 })).toBe("fails not-as-expected");
  });
});

describe("several readings of one test", () => {
  it("counts the last by date wherever it stands and names the others", () => {
    const at = (id: string, when: string | undefined, valueV: number) =>
      ({ id, test: V, kind: "voltage", valueV, plusMinus: 0.02, at: when }) as unknown as Reading;
    const readings = [at("r1", "2026-05-03", 12.22), at("r2", undefined, 11), at("r3", "2026-05-02", 11)];
    const judged = report(readings).judged.find((each) => each.test.id === V)!;
    expect([judged.verdict, judged.reading, judged.earlier]).toEqual(["holds", "r1", ["r2", "r3"]]);
    expect(proofWords(judged, "us")).toContain("not counted: r2, r3");
  });
});

describe("strays", () => {
  const whyOf = (test: string | undefined, more: object) => {
    const found = report([{ id: "r9", test, kind: "voltage", ...more } as unknown as Reading]);
    expect(found.unproved).toHaveLength(tests.length);
    return found.strays.map((stray) => `${stray.reading}: ${stray.why}`).join();
  };
  it("are kept with why: no test, an unknown test, another kind of value", () => {
    expect(whyOf(undefined, { valueV: 12 })).toBe("r9: It names no test.");
    expect(whyOf("t-c99-current", { valueV: 12 })).toBe("r9: There is no test t-c99-current on the sheet.");
    expect(whyOf(V, { kind: "current", valueA: 2 })).toBe("r9: The test wants volts.");
    expect(whyOf(A, { valueV: 12 })).toBe("r9: The test wants amperes.");
    expect(whyOf("t-c1-switches", { valueV: 12 })).toBe("r9: The test wants yes or no.");
  });
  it("are readings taken elsewhere, against another point, or with something else on", () => {
    const at = (point: string, against?: string) => ({
      valueV: 12.22,
      point: { at: point },
      ...(against === undefined ? {} : { against: { at: against } }),
    });
    expect(whyOf(V, at("l-other", "l-other"))).toContain("l-other");
    expect(whyOf(V, at("l-lamp"))).toContain("both probes on the load");
    expect(whyOf(V, { valueV: 12.22, state: { chargerOn: true } })).toContain("charger");
    expect(whyOf(V, { valueV: 12.22, state: { engineOn: true } })).toContain("engine");
    expect(whyOf(V, { valueV: 12.22, state: { on: "all" } })).toContain("other circuits");
    expect(whyOf(V, { valueV: 12.22, state: { on: "none" } })).toContain("circuit off");
    expect(whyOf(V, { valueV: 12.22, state: { on: ["c1"], dutyRatio: { c1: 0.5 } } })).toContain("dimmed");
  });
  it("are not readings taken where and how the test asks", () => {
    const point = { point: { at: "l-lamp" }, against: { at: "l-lamp" }, state: { on: ["c1"], chargerOn: false } };
    expect(verdictOf(V, { valueV: 12.22, plusMinus: 0.02, ...point })).toBe("holds within");
  });
});

describe("a test with nothing to expect", () => {
  it("stays unproved even when it is read, and the reading is kept on it", () => {
    const dark = smallCoach({ loads: [{ id: "l-lamp", name: "Lamp", class: "led-linear" }] });
    const found = judge(testsOf(dark), [read(A, { kind: "current", valueA: 2 })], dark, []);
    const judged = found.judged.find((each) => each.test.id === A)!;
    expect([judged.verdict, judged.code, judged.read?.value, judged.reading]).toEqual([
      "unproved",
      "nothing-expected",
      2,
      `r-${A}`,
    ]);
    expect(found.unproved).toContain(A);
    expect(found.strays).toEqual([]);
  });
});

describe("signing", () => {
  const good = [
    read("t-m1-address", { kind: "address", address: 7 }),
    read("t-c1-switches", { kind: "symptom", said: "yes" }),
    read(V, { valueV: 12.22, plusMinus: 0.02 }),
  ];
  it("is allowed with tests unproved, which are listed", () => {
    const found = report(good);
    expect(found.maySign).toBe(true);
    expect(found.unproved).toEqual([A, "t-c1-dims"]);
  });
  it("is refused while a test fails, in words", () => {
    const found = report([...good, read("t-c1-dims", { kind: "symptom", said: "no" })]);
    expect(found.maySign).toBe(false);
    expect(found.signingStoppedBy).toEqual(['c1, dims: FAILS. Seen "no"; expected yes.']);
  });
  it("is refused while a detector sits on a switched channel, though every test holds", () => {
    const switched = smallCoach({
      circuits: [circuitOn(1, "l-lamp"), { ...circuitOn(3, "l-gas") }],
      loads: [lamp, { id: "l-gas", name: "Gas detector", class: "detector", currentA: 0.1 }],
    });
    const found = judge(testsOf(switched), good, switched);
    expect(found.judged.filter((each) => each.verdict === "fails")).toEqual([]);
    expect(found.maySign).toBe(false);
    expect(found.signingStoppedBy.some((why) => why.includes("Gas detector"))).toBe(true);
  });
  it("is not refused by the same detector on a plain fuse of its own", () => {
    const apart = smallCoach({
      circuits: [
        circuitOn(1, "l-lamp"),
        {
          ...circuitOn(3, "l-gas"),
          module: undefined,
          channel: undefined,
          fusePosition: { name: "F1", node: "n-pos" },
          out: wireOf(0.1),
        },
      ],
      loads: [lamp, { id: "l-gas", name: "Gas detector", class: "detector", currentA: 0.1 }],
    });
    const found = judge(testsOf(apart), good, apart);
    expect(found.signingStoppedBy.filter((why) => why.includes("Gas detector"))).toEqual([]);
  });
});

describe("words", () => {
  it("say the middle figure and the span of what is expected", () => {
    expect(testWords(tests.find((test) => test.id === V)!, "us")).toContain(
      "Expected: about 12.22 V, from 12.18 V to 12.26 V.",
    );
  });
  it("say something of their own for every code", () => {
    const judged = report([]).judged[0]!;
    const said = JUDGED_CODES.map((code) => proofWords({ ...judged, code }, "metric"));
    expect(new Set(said).size).toBe(JUDGED_CODES.length);
  });
});
