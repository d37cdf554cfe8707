import { checkRecord, type Finding } from "@fusebook/core/findings";
import { busyState, quantilesOf, sampleCoach, solveCoach } from "@fusebook/core/network";
import type { Outcome } from "@fusebook/core/quantity";
import { indexRecord } from "@fusebook/core/record";
import { describe, expect, it } from "vitest";
import { hastyCoach } from "./doubt-coach.js";
import { drawCoach } from "./doubt-truth.js";
import { seededChance } from "./network-states.js";

const COACHES = 500;
const SAMPLES = 300;

interface Tally {
  said: number;
  wrong: number;
  undecided: number;
}

const nameOf = (finding: Finding): string =>
  `${finding.code} ${finding.subject.path} ${finding.parameters.run ?? ""} ${finding.parameters.column ?? ""}`;

const byName = (findings: readonly Finding[]): Map<string, Finding> =>
  new Map(findings.map((finding) => [nameOf(finding), finding]));

/** Verdicts that compare a quantity with a limit: the ones that figures and their tolerances can make wrong. */
const isCompared = (finding: Finding): boolean => typeof finding.parameters.gotLo === "number";

interface Band {
  values: number;
  covered: number;
}

function cover(band: Band, drawn: Float64Array, truth: number): void {
  const [lo, hi] = quantilesOf(drawn, [0.05, 0.95]) as [number, number];
  if (hi - lo < 1e-9 * Math.max(1, Math.abs(lo))) return;
  band.values++;
  if (lo <= truth && truth <= hi) band.covered++;
}

const share = (part: number, all: number): string => `${((100 * part) / Math.max(1, all)).toFixed(3)} %`;
const row = (...cells: (string | number)[]): string =>
  `${String(cells[0]).padEnd(26)}${cells
    .slice(1)
    .map((cell) => String(cell).padStart(12))
    .join("")}\n`;

describe("calibration on 500 coaches whose truth is drawn from what the record states", () => {
  const tally: Record<"holds" | "fails", Tally> = {
    holds: { said: 0, wrong: 0, undecided: 0 },
    fails: { said: 0, wrong: 0, undecided: 0 },
  };
  const codes = new Map<string, { holds: number; fails: number; open: number; wrong: number }>();
  const openTruth = { holds: 0, fails: 0 };
  const bands = new Map<string, Band>();
  const wrong: string[] = [];
  let unsolved = 0;

  it("says holds and fails wrongly in at most 0.1 % of verdicts, and 90 % bands hold the truth 88 to 92 times in a hundred", () => {
    for (let seed = 1; seed <= COACHES; seed++) {
      const chance = seededChance(7919 * seed);
      const circuits = 2 + (seed % 9);
      const record = hastyCoach(seed, circuits, chance, seed % 3 === 0 ? 0.15 : 0);
      const index = indexRecord(record);
      const truth = indexRecord(drawCoach(record, chance));
      const said = byName(checkRecord(index, { includeHolds: true }).filter(isCompared));
      const real = byName(checkRecord(truth, { includeHolds: true }).filter(isCompared));
      for (const [name, finding] of said) {
        const fact = real.get(name);
        const code = codes.get(finding.code) ?? { holds: 0, fails: 0, open: 0, wrong: 0 };
        codes.set(finding.code, code);
        code[finding.verdict]++;
        if (finding.verdict === "open") {
          if (fact !== undefined && fact.verdict !== "open") openTruth[fact.verdict]++;
          continue;
        }
        const counted = tally[finding.verdict];
        if (fact === undefined || fact.verdict === "open") {
          counted.undecided++;
          continue;
        }
        counted.said++;
        if (fact.verdict === finding.verdict) continue;
        counted.wrong++;
        code.wrong++;
        wrong.push(
          `seed ${seed} ${name}: said ${finding.verdict} ${JSON.stringify(finding.parameters)}, is ${JSON.stringify(fact.parameters)}`,
        );
      }
      const state = busyState(index);
      const drawn = sampleCoach(index, state, { seed, samples: SAMPLES });
      const solved = solveCoach(truth, state);
      if (drawn.kind !== "known" || solved.kind !== "known") {
        unsolved++;
        continue;
      }
      const band = (name: string): Band => {
        const found = bands.get(name) ?? { values: 0, covered: 0 };
        bands.set(name, found);
        return found;
      };
      for (const [id, load] of drawn.value.loads) {
        const fact = solved.value.loads.get(id);
        if (load.kind !== "known" || fact?.kind !== "known") continue;
        for (const name of ["onV", "onA", "dropV"] as const)
          cover(band(`load ${name}`), load.value[name], fact.value[name]);
      }
      for (const name of ["circuitA", "moduleA", "cableA", "cableDropV"] as const)
        for (const [id, values] of drawn.value[name] as ReadonlyMap<string, Outcome<Float64Array>>) {
          const fact = (solved.value[name] as ReadonlyMap<string, Outcome<number>>).get(id);
          if (values.kind === "known" && fact?.kind === "known") cover(band(name), values.value, fact.value);
        }
      for (const [id, { terminalV, currentA }] of drawn.value.supplies) {
        const fact = solved.value.supplies.get(id);
        if (fact === undefined) continue;
        cover(band("supply terminalV"), terminalV, fact.terminalV);
        cover(band("supply currentA"), currentA, fact.currentA);
      }
    }
    const all = [...bands.values()].reduce((sum, one) => ({
      values: sum.values + one.values,
      covered: sum.covered + one.covered,
    }));
    process.stdout.write(
      [
        `\n${COACHES} coaches, ${SAMPLES} samples each; ${unsolved} without an operating point\n`,
        row("verdict", "compared", "wrong", "share", "no truth"),
        ...(["holds", "fails"] as const).map((verdict) => {
          const { said, wrong: bad, undecided } = tally[verdict];
          return row(verdict, said, bad, share(bad, said), undecided);
        }),
        row("open", openTruth.holds + openTruth.fails, "-", `${openTruth.holds} hold`, `${openTruth.fails} fail`),
        row("rule", "holds", "fails", "open", "wrong"),
        ...[...codes].sort().map(([code, one]) => row(code, one.holds, one.fails, one.open, one.wrong)),
        row("90 % band of", "values", "covered", "share"),
        ...[...bands].sort().map(([name, one]) => row(name, one.values, one.covered, share(one.covered, one.values))),
        row("all", all.values, all.covered, share(all.covered, all.values)),
      ].join(""),
    );
    for (const verdict of ["holds", "fails"] as const) {
      expect(tally[verdict].said).toBeGreaterThan(1000);
      expect(tally[verdict].wrong / tally[verdict].said).toBeLessThanOrEqual(0.001);
    }
    // None was wrong when this was written; the first that is shows itself here, whatever the share.
    expect(wrong.slice(0, 10)).toEqual([]);
    expect(all.covered / all.values).toBeGreaterThanOrEqual(0.88);
    expect(all.covered / all.values).toBeLessThanOrEqual(0.92);
  }, 600_000);
});
