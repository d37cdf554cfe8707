import { demoRecordText } from "@fusebook/fixtures";
import { describe, expect, it } from "vitest";
import { COMMANDS } from "./commands.js";
import { type MemoryIo, memoryIo } from "./memory-io.js";
import { runLine } from "./run.js";

const run = async (
  line: readonly string[],
  files: Record<string, string> = { "a.json": demoRecordText() },
): Promise<{ code: number; io: MemoryIo; said: string; complained: string }> => {
  const io = memoryIo(files);
  const code = await runLine(line, COMMANDS, io);
  return { code, io, said: io.said.join("\n"), complained: io.complained.join("\n") };
};

/** One module that dims channels 1 and 2 at 220 Hz, with these loads on 1, 2 ...: known all the way to the battery. */
const coach = (loads: readonly object[]): string =>
  JSON.stringify({
    format: "fusebook/1",
    id: "x",
    coach: { name: "Test coach", nominalV: 12 },
    supplies: [
      {
        id: "s1",
        name: "Bank",
        kind: "battery",
        node: "n-plus",
        returnNode: "n-minus",
        openCircuitV: { value: 12.6, basis: "measured", plusMinus: 0 },
        internalResistanceOhm: { value: 0.01, basis: "measured", plusMinus: 0 },
      },
    ],
    nodes: [
      { id: "n-plus", name: "plus", kind: "busbar" },
      { id: "n-minus", name: "minus", kind: "busbar" },
    ],
    moduleKinds: [
      {
        id: "d4",
        name: "D4",
        channels: 4,
        output: "pwm",
        pwmHz: { value: 220, basis: "measured", plusMinus: 0 },
        minDutyRatio: 0.05,
        dutySteps: 100,
        ratedDimmedA: 6,
        dimBlocks: [{ id: "b1", channels: [1, 2] }],
      },
    ],
    modules: [{ id: "m1", name: "Front module", kind: "d4", feedNode: "n-plus" }],
    circuits: loads.map((_, i) => ({
      id: `c${i + 1}`,
      name: `Circuit ${i + 1}`,
      module: "m1",
      channel: i + 1,
      fuse: { ratedA: 10 },
      out: { gauge: "14 AWG", lengthM: 5 },
      return: { gauge: "14 AWG", lengthM: 5, node: "n-minus" },
      loads: [`l${i + 1}`],
    })),
    loads: loads.map((load, i) => ({ id: `l${i + 1}`, name: `Lamp ${i + 1}`, ratedV: 12, ...load })),
  });

describe("fusebook dim", () => {
  it("says of every load of the coach whether it may dim, and why", async () => {
    const { said, code } = await run(["dim", "a.json"]);
    expect(code).toBe(1); // the demo has a fan on a lamp circuit
    expect(said).toMatch(/c3\.01 +Bath fan +NO +it moves/);
    expect(said).toContain("Caution");
  });

  it("judges one circuit: flicker by IEEE 1789, lowest duty, currents, a ramp on the module's own steps", async () => {
    const { said, code } = await run(["dim", "a.json", "c1"], {
      "a.json": coach([{ class: "led-resistor", currentA: 2 }]),
    });
    expect(code).toBe(1); // 100 % modulation at 220 Hz is above 17.6 %
    expect(said).toContain("swings 100 %, nothing filters it; EXCEEDS low risk (limit 18 %)");
    expect(said).toContain("lowest duty: 5 %, looks 27 of 100; the module goes no lower");
    expect(said).toMatch(/step +duty +set +looks \(L\*\) +pulse\n +1 +5 % +5 +26\.7/);
    expect(said).toMatch(/100 % +100 +100\.0/);
  });

  it("shows that dimming does not lower the current in the pulse, nor the drop while on", async () => {
    const { said } = await run(["dim", "a.json", "c1", "--json"], {
      "a.json": coach([{ class: "led-linear", currentA: { value: 2, basis: "measured", plusMinus: 0 } }]),
    });
    const rows = JSON.parse(said).currents.value;
    for (const row of rows) {
      expect(row.onA).toBeCloseTo(2, 9);
      expect(row.dropV).toBeCloseTo(rows[0].dropV, 9);
      expect(row.meanA).toBeCloseTo(2 * row.dutyRatio, 9);
      expect(row.rmsA).toBeCloseTo(2 * Math.sqrt(row.dutyRatio), 9);
    }
  });

  it("marks what rests on memory, and names what would settle it", async () => {
    const { said } = await run(["dim", "a.json", "c1"], { "a.json": coach([{ class: "led-driver", currentA: 1 }]) });
    expect(said).toContain("FROM MEMORY");
    expect(said).toContain("the capacitor at the driver's input");
    expect(said).toContain("its filter is not known: taken as none");
  });

  it("takes the driver's capacitor where the record has it: it runs on, and so does not dim", async () => {
    const { said } = await run(["dim", "a.json", "c1"], {
      "a.json": coach([
        {
          class: "led-driver",
          currentA: { value: 0.5, basis: "measured", plusMinus: 0 },
          allowsPwm: true,
          inputCapacitanceF: { value: 0.002, basis: "measured", plusMinus: 0 },
          dropOutV: { value: 8, basis: "measured", plusMinus: 0 },
        },
      ]),
    });
    expect(said).toContain("input capacitor from the record");
    expect(said).toContain("swings 0.00 %, its capacitor filters");
  });

  it("names readings that contradict each other", async () => {
    const readings = [
      { voltageV: 12, currentA: 1.5 },
      { voltageV: 13.5, currentA: 1 },
    ];
    const { said } = await run(["dim", "a.json", "c1"], {
      "a.json": coach([{ class: "led-resistor", currentA: 2, drawReadings: readings }]),
    });
    expect(said).toContain("THEY CONTRADICT EACH OTHER: readings 1 and 2: fewer amps at more volts");
  });

  it("draws the ramp as a picture, once, and keeps a file that is there", async () => {
    const files = { "a.json": coach([{ class: "filament", currentA: 2 }]) };
    const { io } = await run(["dim", "a.json", "m1", "--svg", "ramp.svg"], files);
    const svg = new TextDecoder().decode(io.files.get("ramp.svg"));
    expect(svg).toMatch(/^<svg/);
    expect(svg).toContain("Filaments");
    const again = await run(["dim", "a.json", "m1", "--svg", "ramp.svg"], { ...files, "ramp.svg": "kept" });
    expect(again.code).toBe(2);
    expect(again.complained).toContain("--replace");
  });

  it("finds a circuit by the name of its load, and names the nearest where there is none", async () => {
    const files = { "a.json": coach([{ class: "filament", currentA: 2 }]) };
    expect((await run(["dim", "a.json", "lamp 1"], files)).said).toContain("c1  Circuit 1");
    const { code, complained } = await run(["dim", "a.json", "lamq 1"], files);
    expect(code).toBe(2);
    expect(complained).toContain("the nearest are c1 (Circuit 1)");
    expect((await run(["dim", "a.json", "zzzzzzzzzzzz"], files)).complained).toContain("it has modules m1");
  });

  it("judges on another kind with --as, and refuses kinds, steps and pictures that cannot be", async () => {
    const asD8 = await run(["dim", "a.json", "c1.04", "--as", "d8"]);
    expect(asD8.said).toContain("PWM 220 Hz");
    for (const [line, why] of [
      [["dim", "a.json", "c1.04", "--as", "d9x"], "it has"],
      [["dim", "a.json", "c1.04", "--steps", "1"], "from 2 to 64"],
      [["dim", "a.json", "--svg", "x.svg"], "name a circuit or a module"],
      [["dim", "a.json", "c1.01", "--svg", "x.svg"], "switches by relay"],
    ] as const) {
      const { code, complained } = await run(line);
      expect(code, line.join(" ")).toBe(2);
      expect(complained).toContain(why);
    }
  });
});
