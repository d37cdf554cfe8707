import { describe, expect, it } from "vitest";
import { COMMON_PRACTICE } from "../../quantity/index.js";
import { sourceOf } from "../../tables/index.js";
import { FINDING_CODES } from "../codes.js";
import type { Finding } from "../finding.js";
import { findingsOf } from "../test-coach.js";
import { evidenceWords } from "./evidence-words.js";
import { fieldWords } from "./field-words.js";
import { findingLine, findingWords, settledByWords } from "./finding-words.js";
import { sourceWords } from "./source-words.js";

const bare = (code: Finding["code"], verdict: Finding["verdict"]): Finding => ({
  code,
  verdict,
  severity: "watch",
  subject: { path: "circuits[0]", id: "c1", name: "Galley lamps" },
  parameters: {},
  evidence: [],
  source: COMMON_PRACTICE,
  settledBy: [],
});

const farFuse = () =>
  findingsOf("protection-far-from-source", {
    supplies: [{ id: "s", kind: "battery", name: "House", node: "bat" }],
    cables: [
      {
        id: "k1",
        name: "Feeder 1",
        from: "bat",
        to: "bus",
        protection: { ratedA: 50, distanceFromSourceM: { value: 0.6, basis: "measured", plusMinus: 0 } },
      },
    ],
  })[0]!;

describe("words of findings", () => {
  it.each(FINDING_CODES)("%s: heading, statement and remedy are whole sentences' parts for every verdict", (code) => {
    for (const verdict of ["holds", "fails", "open"] as const) {
      const words = findingWords(bare(code, verdict), "us");
      expect(words.title.length).toBeGreaterThan(5);
      expect(words.statement).toMatch(/^Galley lamps: wanted .+, got /);
      expect(words.remedy.length).toBeGreaterThan(3);
      expect(`${words.title} ${words.statement} ${words.remedy}`).not.toMatch(/undefined|NaN|\[object/);
    }
  });
  it("heads an open finding as not settled, and what holds with the question that was asked", () => {
    const title = (code: Finding["code"], verdict: Finding["verdict"]) => findingWords(bare(code, verdict), "us").title;
    expect(title("fuse-over-channel", "fails")).toBe("Fuse too large for the channel");
    expect(title("fuse-over-channel", "open")).toBe("Not settled: fuse too large for the channel");
    expect(title("fuse-over-channel", "holds")).toBe("Holds: Is each fuse no larger than its module's channel allows?");
    expect(title("load-class-missing", "open")).toBe("Sort of load not known");
  });
  it("puts where, wanted, got, what next and the code into one line, in the reader's units", () => {
    expect(findingLine(farFuse(), "metric")).toBe(
      "Feeder 1: wanted at most 450 mm of cable before its fuse, got 600 mm; move the fuse to the supply's end; keep the cable before it covered and clear of metal [protection-far-from-source]",
    );
    expect(findingLine(farFuse(), "us")).toContain("at most 17.7 in of cable before its fuse, got 23.6 in;");
  });
  it("says that a limit is from memory where its source is", () => {
    const memory = { ...farFuse(), source: { ...COMMON_PRACTICE, how: "memory" as const } };
    expect(findingWords(memory, "metric").statement).toContain("at most 450 mm (from memory)");
  });
  it("gives the span of what was got where it is wider than it is shown", () => {
    const wide = { ...farFuse(), parameters: { got: 0.5, gotLo: 0.4, gotHi: 0.6, limit: 0.45 } };
    expect(findingWords({ ...wide, verdict: "open" }, "metric").statement).toBe(
      "Feeder 1: wanted at most 450 mm of cable before its fuse, got 500 mm (it may be 400 mm to 600 mm); not known well enough to decide",
    );
  });
  it("tells an open finding's reading as an instruction", () => {
    expect(settledByWords({ path: "loads[3].currentA", instrument: "clamp meter", minutes: 7.2 })).toBe(
      "Clamp the current it draws (clamp meter, about 7 min)",
    );
  });
  it("calls a field by its path where it has no word for it", () => {
    expect(fieldWords("circuits[3].out.lengthM")).toBe("the length of the wire");
    expect(fieldWords("circuits[3].mystery")).toBe("circuits[3].mystery");
  });
});

describe("words of sources and evidence", () => {
  it("names publication, clause and how it was seen; a rule of the trade says that it has none", () => {
    expect(sourceWords(COMMON_PRACTICE)).toBe("common practice, no source");
    expect(sourceWords(sourceOf("blade-times"))).toMatch(/^ISO 8820-3.*\(from memory\)$/);
    expect(sourceWords(sourceOf("can-phys"))).toMatch(/\(seen\)$/);
  });
  it("tells value, basis and span of a piece of evidence", () => {
    expect(
      evidenceWords(
        { path: "x", label: "fuse-rating", unit: "A", value: 15, basis: "marked", span: { lo: 15, hi: 15 } },
        "us",
      ),
    ).toBe("fuse: 15 A (marked)");
    expect(
      evidenceWords(
        { path: "x", label: "length", unit: "m", value: 2, basis: "measured", span: { lo: 1.9, hi: 2.1 } },
        "metric",
      ),
    ).toBe("length: 2 m (measured, 1.9 m to 2.1 m)");
  });
});
