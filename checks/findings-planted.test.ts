import { checkRecord, type FindingCode, type Verdict } from "@fusebook/core/findings";
import { type CoachRecord, indexRecord } from "@fusebook/core/record";
import { demoRecord, generateCoach } from "@fusebook/fixtures";
import { describe, expect, it } from "vitest";

const found = (record: CoachRecord) => checkRecord(indexRecord(record));
const grave = (record: CoachRecord) =>
  found(record)
    .filter(({ severity }) => severity === "stop" || severity === "mend")
    .map(({ code, subject, verdict, parameters }) => `${code} ${subject.id} ${verdict} ${JSON.stringify(parameters)}`);

describe("generated coaches", () => {
  it.each([1, 8, 30, 60, 100])("of %i circuits with nothing planted have no stop and nothing to mend", (circuits) => {
    for (const seed of [1, 2]) expect(grave(generateCoach({ seed, circuits }).record)).toEqual([]);
  });

  it.each([5, 20, 60, 120])(
    "of %i circuits: every planted fault is found, by code, subject and verdict",
    (circuits) => {
      for (const seed of [11, 12]) {
        const { record, planted } = generateCoach({ seed, circuits, faults: "every", missingRatio: 0.1 });
        const all = new Set(found(record).map(({ code, subject, verdict }) => `${code} ${subject.id} ${verdict}`));
        const lost = planted
          .map(({ finding, subject, verdict }) => `${finding} ${subject} ${verdict}`)
          .filter((told) => !all.has(told));
        expect(lost, `seed ${seed}`).toEqual([]);
        // A coach of this size has room for most of the faults there are.
        if (circuits >= 60)
          expect(new Set(planted.map(({ finding }) => finding)).size).toBeGreaterThan(circuits >= 120 ? 30 : 20);
      }
    },
  );
});

describe("the demo coach", () => {
  // What the coach's story puts wrong with it, by the object that is spoiled.
  it.each<[string, FindingCode, string, Verdict]>([
    ["a fan hangs on a lamp circuit", "mixed-circuit", "c3.01", "fails"],
    ["the thin long feeder has too large a device", "feeder-device-over-conductor", "k-m4", "fails"],
    ["the galley ground is shared and poor", "shared-return-poor", "n-gnd-galley", "fails"],
    ["one label is wrong", "label-contradicts-loads", "c4.08", "fails"],
    ["one module answers to an address that its switches do not show", "address-not-shown-by-switches", "m4", "fails"],
    ["one switch is under sealant", "address-not-shown-by-switches", "m3", "open"],
    ["one feeder's device hangs on a pigtail", "protection-far-from-source", "k-m5", "fails"],
    ["the gas detector sits on a module", "detector-on-switched-channel", "l-gas-detector", "fails"],
    ["one wire's gauge was not read", "wire-gauge-missing", "c2.05", "open"],
    ["one lamp's draw was not read", "load-current-missing", "l-hutch-lamp", "open"],
    ["one insulation was not read", "insulation-unknown", "c1.04", "open"],
    ["one fuse feeds nobody knows what", "spare-fuse-fitted", "c-f20", "open"],
  ])("%s", (_, code, subject, verdict) => {
    const here = found(demoRecord()).filter((f) => f.code === code && f.subject.id === subject);
    expect(here.map((f) => f.verdict)).toContain(verdict);
  });

  it("raises a stop only where something may burn or a life depends on it", () => {
    const stops = found(demoRecord()).filter((f) => f.severity === "stop" && f.verdict === "fails");
    expect(new Set(stops.map((f) => f.code))).toEqual(
      new Set(["feeder-device-over-conductor", "fuse-over-conductor", "detector-on-switched-channel"]),
    );
  });
});
