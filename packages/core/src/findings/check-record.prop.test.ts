import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { checkRecord } from "./check-record.js";
import type { FindingCode } from "./codes.js";
import type { Finding } from "./finding.js";
import { coachOf } from "./test-coach.js";
import { read, solvedCoach } from "./test-solved-coach.js";
import { findingLine } from "./words/finding-words.js";

/** One figure of a coach: about so much, doubted by a share of itself. */
interface Drawn {
  readonly value: number;
  readonly doubtRatio: number;
}
const figure = (min: number, max: number) =>
  fc.record({ value: fc.double({ min, max, noNaN: true }), doubtRatio: fc.double({ min: 0, max: 0.3, noNaN: true }) });

const drawn = fc.record({
  lampA: figure(0.2, 12),
  pumpA: figure(1, 12),
  outOhm: figure(0.005, 0.3),
  feederOhm: figure(0.001, 0.03),
  groundOhm: figure(0.001, 0.01),
  openCircuitV: figure(11.5, 12.8),
  fuseA: figure(3, 20),
  distanceM: figure(0.2, 0.8),
  betweenOhm: figure(40, 80),
  pwmHz: figure(100, 2000),
  widen: fc.double({ min: 1, max: 4, noNaN: true }),
});

type Draw = Omit<typeof drawn extends fc.Arbitrary<infer T> ? T : never, "widen">;

const span = ({ value, doubtRatio }: Drawn, widen: number) => read(value, value * doubtRatio * widen);

/** A coach with a figure of every sort near some limit, every doubt made this many times as wide. */
function coach(draw: Draw, widen: number) {
  const of = (name: keyof Draw) => span(draw[name], widen);
  const parts = solvedCoach(
    [
      {
        load: { class: "led-resistor", currentA: of("lampA"), isContinuous: true, minV: 11, maxV: 12.5, maxFuseA: 7.5 },
        outOhm: of("outOhm"),
      },
      { load: { class: "pump", currentA: of("pumpA"), stallA: read(60), minV: 10.5 } },
    ],
    {
      battery: { openCircuitV: of("openCircuitV") },
      feeder: {
        resistanceOhm: of("feederOhm"),
        protection: { ratedA: 15, resistanceOhm: read(0), distanceFromSourceM: of("distanceM") },
      },
      bar: { ratedA: 12 },
      kind: {
        output: "pwm",
        ratedSwitchedA: 8,
        ratedDimmedA: 6,
        ratedTotalA: 14,
        maxFuseA: 10,
        pwmHz: of("pwmHz"),
        dimBlocks: [{ id: "b1", channels: [1] }],
        bank: { switches: 1, options: [{ enables: ["b1"], set: [{ switch: 1, position: 1 }] }] },
      },
    },
  );
  return coachOf({
    ...parts,
    modules: parts.modules.map((module) => ({ ...module, positionsFound: "1" })),
    circuits: parts.circuits.map((circuit) => ({ ...circuit, fuse: { ...circuit.fuse, ratedA: of("fuseA") } })),
    nodes: [...parts.nodes, { id: "gnd", kind: "ground", name: "Ground", rail: "return" }],
    cables: [...parts.cables, { id: "k2", kind: "chassis", from: "gnd", to: "neg", resistanceOhm: of("groundOhm") }],
    network: { betweenWiresOhm: of("betweenOhm") },
  });
}

const verdicts = (found: readonly Finding[]): Map<string, Finding["verdict"][]> => {
  const by = new Map<string, Finding["verdict"][]>();
  for (const { code, subject, verdict } of found)
    by.set(`${code} ${subject.path}`, [...(by.get(`${code} ${subject.path}`) ?? []), verdict]);
  return by;
};

describe("doubt and verdicts", () => {
  it("a wider tolerance never turns open into holds or fails, and never holds into fails or fails into holds", () => {
    const met = new Set<FindingCode>();
    fc.assert(
      fc.property(drawn, ({ widen, ...draw }) => {
        const narrow = checkRecord(coach(draw, 1), { includeHolds: true });
        const wide = verdicts(checkRecord(coach(draw, widen), { includeHolds: true }));
        for (const [key, before] of verdicts(narrow)) {
          const after = wide.get(key);
          expect(after?.length, key).toBe(before.length);
          before.forEach((verdict, i) => {
            if (after?.[i] !== "open") expect(`${key} ${after?.[i]}`).toBe(`${key} ${verdict}`);
          });
        }
        for (const { code, verdict } of narrow) if (verdict === "open") met.add(code);
      }),
      { seed: 20260725, numRuns: 150 },
    );
    // The property says something only about rules that were seen open.
    for (const code of [
      "load-over-fuse",
      "continuous-load-over-fuse",
      "fuse-over-channel",
      "fuse-over-load-limit",
      "channel-over-rating",
      "dimmed-channel-over-rating",
      "module-over-rating",
      "feeder-over-device",
      "busbar-over-rating",
      "drop-over-limit",
      "feeder-drop-over-limit",
      "voltage-under-minimum",
      "voltage-over-maximum",
      "ground-resistance-high",
      "protection-far-from-source",
      "termination-wrong",
      "flicker-risk",
    ] satisfies FindingCode[])
      expect([...met], code).toContain(code);
  });
});

/** Figures that nobody should write down, and some that somebody may. */
const odd = fc.oneof(
  fc.constantFrom(0, -1, 1e-6, -1e6, 1e6),
  fc.integer({ min: -1_000_000, max: 1_000_000 }).map((thousandths) => thousandths / 1000),
  fc.record({
    value: fc.integer({ min: -1_000_000, max: 1_000_000 }).map((thousandths) => thousandths / 1000),
    basis: fc.constantFrom("measured", "marked", "typical", "assumed"),
    plusMinus: fc.constantFrom(0, 1, 1e6),
  }),
);
const id = fc.constantFrom("a", "b", "c", "d");
const maybe = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: undefined });
const run = fc.record(
  {
    gauge: fc.constantFrom("14 AWG", "2.5 mm2", "99", "??", "", "4/0", "-3 AWG"),
    sectionMm2: odd,
    lengthM: odd,
    resistanceOhm: odd,
    insulationC: odd,
    bundleCount: odd,
    zone: fc.constantFrom("cabin", "engine", "moon"),
    node: id,
    place: id,
  },
  { requiredKeys: [] },
);
const fuse = fc.record(
  { ratedA: odd, resistanceOhm: odd, type: fc.constantFrom("blade", "breaker") },
  { requiredKeys: [] },
);
const anyRecord = fc.record({
  coach: fc.record({ name: fc.constant("Odd"), nominalV: fc.constantFrom(12, 24, 0.001, 1e6) }),
  places: fc.array(fc.record({ id, name: fc.constantFrom("", "Bay", "a"), within: id, accessMin: odd }), {
    maxLength: 3,
  }),
  supplies: fc.array(
    fc.record(
      {
        id,
        kind: fc.constantFrom("battery", "charger", "alternator", "solar"),
        name: fc.constant("S"),
        node: id,
        returnNode: id,
        openCircuitV: odd,
        internalResistanceOhm: odd,
        capacityAh: odd,
        outputV: odd,
        ratedA: odd,
      },
      { requiredKeys: ["id", "kind", "name"] },
    ),
    { maxLength: 3 },
  ),
  nodes: fc.array(
    fc.record({ id, kind: fc.constantFrom("busbar", "ground", "stud"), name: fc.constant("N"), ratedA: odd }),
    { maxLength: 4 },
  ),
  cables: fc.array(
    fc.record({
      id,
      from: id,
      to: id,
      kind: fc.constantFrom("wire", "chassis"),
      lengthM: odd,
      gauge: fc.constantFrom("8", "x"),
      protection: fuse,
    }),
    { maxLength: 4 },
  ),
  moduleKinds: fc.array(
    fc.record(
      {
        id,
        name: fc.constant("K"),
        channels: fc.constantFrom(1, 8),
        output: fc.constantFrom("relay", "pwm"),
        ratedSwitchedA: odd,
        ratedDimmedA: odd,
        ratedTotalA: odd,
        maxFuseA: odd,
        pwmHz: odd,
        onResistanceOhm: odd,
        quiescentA: odd,
        dimBlocks: fc.array(fc.record({ id, channels: fc.array(fc.constantFrom(1, 9)) }), { maxLength: 2 }),
        bank: fc.record({
          switches: fc.constantFrom(1, 4),
          options: fc.array(
            fc.record({
              enables: fc.array(id),
              set: fc.array(fc.record({ switch: fc.constantFrom(1, 9), position: fc.constantFrom(0, 1) })),
            }),
            { maxLength: 2 },
          ),
        }),
      },
      { requiredKeys: ["id", "name", "channels"] },
    ),
    { maxLength: 2 },
  ),
  modules: fc.array(
    fc.record(
      { id, kind: id, feedNode: id, place: id, positionsFound: fc.constantFrom("1", "01?", "1111") },
      { requiredKeys: ["id"] },
    ),
    { maxLength: 3 },
  ),
  circuits: fc.array(
    fc.record(
      {
        id,
        module: id,
        channel: fc.constantFrom(1, 9),
        fuse,
        out: run,
        return: run,
        loads: fc.array(id, { maxLength: 3 }),
        label: fc.constantFrom("", "PUMP", "SPARE"),
        isSpare: fc.boolean(),
      },
      { requiredKeys: ["id"] },
    ),
    { maxLength: 4 },
  ),
  loads: fc.array(
    fc.record(
      {
        id,
        name: fc.constantFrom("", "L"),
        class: fc.constantFrom("led-resistor", "filament", "pump", "electronics", "detector", "led-driver"),
        currentA: odd,
        powerW: odd,
        ratedV: odd,
        minV: odd,
        maxV: odd,
        dropOutV: odd,
        ledForwardV: odd,
        ledResistorOhm: odd,
        stallA: odd,
        maxFuseA: odd,
        quantity: fc.constantFrom(1, 1000000),
        isContinuous: fc.boolean(),
        tail: run,
      },
      { requiredKeys: ["id", "name"] },
    ),
    { maxLength: 4 },
  ),
  network: maybe(
    fc.record({
      betweenWiresOhm: odd,
      bitRateKbit: odd,
      trunk: fc.array(fc.record({ at: id, toNextM: odd }), { maxLength: 3 }),
    }),
  ),
});

/** JSON has no undefined. */
const asJson = (value: unknown): Record<string, unknown> => JSON.parse(JSON.stringify(value));

describe("odd records", () => {
  it("are checked without a crash, everything open names a reading, and every finding has its words", () => {
    fc.assert(
      fc.property(anyRecord, (record) => {
        for (const finding of checkRecord(coachOf(asJson(record)), { includeHolds: true })) {
          if (finding.verdict === "open") expect(finding.settledBy.length).toBeGreaterThan(0);
          expect(findingLine(finding, "both")).not.toMatch(/undefined|\[object/);
        }
      }),
      { seed: 20260725, numRuns: 400 },
    );
  });
});
