import { busyState, solveCoach } from "@fusebook/core/network";
import { indexRecord } from "@fusebook/core/record";
import { demoRecord, demoRecordText } from "@fusebook/fixtures";
import { describe, expect, it } from "vitest";
import { COMMANDS } from "../commands.js";
import { memoryIo } from "../memory-io.js";
import { runLine } from "../run.js";

const exactly = (value: number) => ({ value, basis: "measured", plusMinus: 0 });

/** A battery of 12 V behind 0.1 ohm, one heater of 1.1 ohm: 10 A, 11 V. */
const small = (more: object = {}): string =>
  JSON.stringify({
    format: "fusebook/1",
    id: "small",
    coach: { name: "Small", nominalV: 12 },
    nodes: [
      { id: "n-plus", kind: "terminal", name: "plus", rail: "positive" },
      { id: "n-minus", kind: "terminal", name: "minus", rail: "return" },
    ],
    supplies: [
      {
        id: "s-1",
        kind: "battery",
        name: "battery",
        node: "n-plus",
        returnNode: "n-minus",
        openCircuitV: exactly(12),
        internalResistanceOhm: exactly(0.1),
      },
    ],
    circuits: [
      {
        id: "c1",
        label: "HEATER",
        fusePosition: { node: "n-plus", name: "F1" },
        fuse: { ratedA: 15, resistanceOhm: exactly(0) },
        out: { resistanceOhm: exactly(0) },
        return: { resistanceOhm: exactly(0), node: "n-minus" },
        loads: ["l1"],
      },
    ],
    loads: [{ id: "l1", name: "Heater", class: "resistive-heater", ratedV: exactly(11), currentA: exactly(10) }],
    ...more,
  });

async function run(line: readonly string[], record: string = demoRecordText()) {
  const io = memoryIo({ "a.json": record });
  const code = await runLine(["solve", "a.json", ...line], COMMANDS, io);
  return { code, said: io.said.join("\n"), complained: io.complained.join("\n") };
}
const json = async (line: readonly string[], record?: string) => {
  const { code, said } = await run([...line, "--json"], record);
  return { code, answer: JSON.parse(said) };
};

describe("solve", () => {
  it("a divider by hand: 12 V behind 0.1 ohm and a heater of 1.1 ohm give 10 A at 11 V", async () => {
    const { code, answer } = await json([], small());
    expect(code).toBe(0);
    expect(answer.loads[0].onV.value).toBeCloseTo(11, 4);
    expect(answer.loads[0].onA.value).toBeCloseTo(10, 4);
    expect(answer.supplies[0].terminalV.value).toBeCloseTo(11, 4);
    expect((await run([], small())).said).toMatch(/c1 +Heater +11 V +10 A/);
  });

  it("gives the volts that the engine gives, for the state asked, by stable keys", async () => {
    const { code, answer } = await json(["--state", "busy"]);
    const index = indexRecord(demoRecord());
    const solution = solveCoach(index, busyState(index));
    if (solution.kind !== "known") throw new Error("known is wanted");
    expect(code).toBe(0);
    expect(Object.keys(answer)).toEqual([
      ...["record", "coach", "state", "kind", "supplies", "modules", "cables", "circuits", "loads"],
      ...["leftOut", "assumed", "balance", "iterations"],
    ]);
    expect(answer.loads.length).toBe(solution.value.loads.size);
    for (const load of answer.loads) {
      const known = solution.value.loads.get(load.id);
      expect(load.kind).toBe(known?.kind);
      if (known?.kind === "known") expect(load.onV.value).toBe(known.value.onV);
    }
  });

  it("the drops by place add up to the whole drop", async () => {
    const { answer } = await json([]);
    const known = answer.loads.filter((load: { kind: string }) => load.kind === "known");
    expect(known.length).toBeGreaterThan(30);
    for (const load of known) {
      const sum = load.dropByPlace.reduce((total: number, part: { dropV: number }) => total + part.dropV, 0);
      expect(sum).toBeCloseTo(load.dropV.value, 6);
    }
  });

  it("a circuit is named by id, label or load, with a duty; only what is named is on", async () => {
    for (const name of ["c1.03@40%", "valance@0.4", "Saloon valance strip@40 %"]) {
      const { answer } = await json(["--on", name]);
      expect(answer.state.on).toEqual(["c1.03"]);
      expect(answer.state.dutyRatio).toEqual({ "c1.03": 0.4 });
      expect(answer.loads[0].meanA).toBeCloseTo(0.4 * answer.loads[0].onA.value, 12);
    }
  });

  it("spans and quantiles stand beside the value: the span holds the quantiles, the quantiles are in order", async () => {
    const { answer } = await json(["--on", "c1.03", "--spans", "--samples", "300", "--seed", "5"]);
    const { onV } = answer.loads[0];
    expect(answer.sampled).toEqual({ seed: 5, samples: 300, solved: 300, unsolved: 0, ratios: [0.05, 0.5, 0.95] });
    const [low, middle, high] = onV.quantiles;
    expect([onV.span.lo, low, middle, high, onV.span.hi]).toEqual(
      [onV.span.lo, low, middle, high, onV.span.hi].sort((a, b) => a - b),
    );
    expect(high - low).toBeGreaterThan(0.05);
    const again = await json(["--on", "c1.03", "--spans", "--samples", "300", "--seed", "5"]);
    expect(again.answer).toEqual(answer);
    const other = await json(["--on", "c1.03", "--samples", "300", "--seed", "6"]);
    expect(other.answer.loads[0].onV.quantiles).not.toEqual(onV.quantiles);
  });

  it("a lower charge and a switched-on charger move the volts the way they must", async () => {
    const at = async (...line: string[]) => (await json(line)).answer.loads[0].onV.value as number;
    const full = await at("--charge", "100%");
    const half = await at("--charge", "0.5");
    expect(half).toBeLessThan(full);
    expect(await at("--charge", "50%", "--charger")).toBeGreaterThan(half);
  });

  it.each([
    [["--on", "VALENCE"], "nearest: c1.03 (VALANCE)"],
    [["--on", "c1.01@140%"], "above 0 up to 100 %"],
    [["--on", "c1.01@"], "above 0 up to 100 %"],
    [["--on", "c1.01@0"], "above 0 up to 100 %"],
    [["--on", "c1.01", "--on", "c1.01@20%"], "named twice"],
    [["--state", "bsy"], "wanted all or busy"],
    [["--charge", "60"], "from 0 to 100 %"],
    [["--charge", "full"], "from 0 to 100 %"],
    [["--samples", "0"], "a whole number from 1"],
    [["--samples", "many"], "a whole number from 1"],
    [["--seed", "3"], "says nothing without --samples"],
  ])("%j is a misuse that names the place and the remedy", async (line, words) => {
    const { code, complained } = await run(line);
    expect(code).toBe(2);
    expect(complained).toContain(words);
    expect(complained).toContain(line[0]!);
  });

  it("a coach without a supply gives 1 and names what is wanted; one that cannot run gives 1 and says why", async () => {
    const none = await run([], small({ supplies: [] }));
    expect(none.code).toBe(1);
    expect(none.said).toContain("not on record: supplies");
    const starved = small({
      loads: [{ id: "l1", name: "Driver", class: "led-driver", powerW: exactly(400), dropOutV: exactly(9) }],
    });
    const refused = await run([], starved);
    expect(refused.code).toBe(1);
    expect(refused.said).toContain("can neither run nor stay out");
    expect((await json([], starved)).answer).toMatchObject({ kind: "refused", code: "no-operating-point" });
  });
});
