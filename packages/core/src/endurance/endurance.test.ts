import { demoRecord, generateCoach } from "@fusebook/fixtures";
import { describe, expect, it } from "vitest";
import { type CoachRecord, indexRecord, type LoadProfile, type Supply } from "../record/index.js";
import {
  enduranceOf,
  isDimmingChannel,
  parasiticOf,
  profilesOf,
  readProfile,
  spanUses,
  standingDraws,
} from "./index.js";

const clean = (): CoachRecord => structuredClone(generateCoach({ seed: 4, circuits: 12 }).record) as CoachRecord;
const bank = (record: CoachRecord): Supply => record.supplies!.find((supply) => supply.kind === "battery")!;
const refusal = (record: CoachRecord, profile: string | LoadProfile = "night", options = {}) =>
  enduranceOf(indexRecord(record), profile, options);
const profile = (spans: LoadProfile["spans"]): LoadProfile => ({ id: "mine", spans });

describe("bad input is an answer that names the place and the remedy, never a throw", () => {
  it("an empty profile", () => {
    expect(refusal(clean(), profile([]))).toMatchObject({ kind: "refused", code: "profile-empty" });
    const found = refusal(clean(), profile([]));
    expect(found.kind === "refused" && found.because).toMatch(
      /profile mine\.spans: wanted one span of hours or more, got none; say for how long/,
    );
  });

  it("a profile on the record is named by its path there", () => {
    const record = clean();
    record.endurance = { profiles: [{ id: "weekend", spans: [] }] };
    const found = refusal(record, "weekend");
    expect(found.kind === "refused" && found.because).toMatch(/^endurance\.profiles\[0\]\.spans/);
  });

  it.each([
    [
      "a circuit that is not there",
      [{ hours: 1, on: [{ circuits: ["c9.99"] }] }],
      "profile-circuit-unknown",
      /spans\[0\]\.on\[0\]\.circuits\[0\]: the coach has no circuit c9\.99; take it out or write/,
    ],
    [
      "a load that is not there",
      [{ hours: 1, on: [{ loads: ["l-x"] }] }],
      "profile-load-unknown",
      /spans\[0\]\.on\[0\]\.loads\[0\]: the coach has no load l-x/,
    ],
    ["no hours", [{ hours: 0, on: [] }], "profile-hours-wrong", /spans\[0\]\.hours: wanted more than 0 hours, got 0/],
    [
      "hours without end",
      [{ hours: Number.POSITIVE_INFINITY, on: [] }],
      "profile-hours-wrong",
      /wanted more than 0 hours/,
    ],
    [
      "a share above 1",
      [{ hours: 1, on: [{ classes: ["fan"], shareRatio: 30 }] }],
      "profile-ratio-wrong",
      /shareRatio: wanted 0 to 1, got 30/,
    ],
    [
      "a duty below 0",
      [{ hours: 1, on: [{ classes: ["filament"], dutyRatio: -0.1 }] }],
      "profile-ratio-wrong",
      /dutyRatio: wanted 0 to 1/,
    ],
  ] as const)("a profile with %s", (_, spans, code, says) => {
    const found = refusal(clean(), profile(spans as never));
    expect(found).toMatchObject({ kind: "refused", code });
    expect(found.kind === "refused" && found.because).toMatch(says);
  });

  it("a profile of no known name lists those there are", () => {
    const found = refusal(clean(), "nacht");
    expect(found).toMatchObject({ kind: "refused", code: "profile-unknown" });
    expect(found.kind === "refused" && found.because).toMatch(/evening, night, stored/);
  });

  it("capacity missing, zero and below zero", () => {
    const record = clean();
    delete bank(record).capacityAh;
    expect(refusal(record)).toEqual({
      kind: "missing",
      needs: [`supplies[${record.supplies!.indexOf(bank(record))}].capacityAh`],
    });
    for (const value of [0, -100]) {
      bank(record).capacityAh = value;
      expect(refusal(record)).toMatchObject({ kind: "refused", code: "capacity-not-positive" });
      expect(parasiticOf(indexRecord(record))).toMatchObject({ kind: "refused", code: "capacity-not-positive" });
    }
  });

  it("a reserve outside 0 to 1, asked for or on the policy", () => {
    for (const reserveRatio of [-0.1, 1.5, Number.NaN])
      expect(refusal(clean(), "night", { reserveRatio })).toMatchObject({
        kind: "refused",
        code: "reserve-out-of-range",
      });
    const record = clean();
    record.policy = { ...record.policy, reserveRatio: 50 };
    const found = refusal(record);
    expect(found.kind === "refused" && found.because).toMatch(
      /policy\.reserveRatio: wanted 0 to 1, got 50; half is written 0\.5/,
    );
  });

  it("an exponent below 1, a charge above 1", () => {
    const record = clean();
    bank(record).peukertExponent = 0.9;
    const found = refusal(record);
    expect(found.kind === "refused" && found.because).toMatch(
      /peukertExponent: wanted 1 or more, got 0\.9; .*take it out or read the sheet again/,
    );
    bank(record).peukertExponent = 1.1;
    bank(record).chargeRatio = 80;
    expect(refusal(record)).toMatchObject({ kind: "refused", code: "charge-out-of-range" });
  });

  it("no battery at all, and an empty record", () => {
    const record = clean();
    record.supplies = record.supplies!.filter((supply) => supply.kind !== "battery");
    expect(refusal(record).kind).toBe("missing");
    expect(refusal({ format: "fusebook/1", id: "x", coach: { name: "x" } } as CoachRecord).kind).toBe("missing");
  });

  it("lead and lithium joined by a closed cable", () => {
    const record = clean();
    record.supplies!.push({ ...bank(record), id: "s-second", name: "Second bank", chemistry: "lifepo4" } as Supply);
    expect(refusal(record)).toMatchObject({ kind: "refused", code: "unlike-banks" });
  });

  it("a battery at its reserve already: no hours, said as the reserve", () => {
    const found = refusal(clean(), "night", { chargeRatio: 0.5, reserveRatio: 0.5 });
    expect(found.kind === "known" && found.value.hours.nominal).toBe(0);
    expect(found.kind === "known" && found.value.ends).toBe("reserve");
    expect(found.kind === "known" && found.value.lastsOnce).toBe("fails");
  });

  it("a profile file that is not one names the field", () => {
    expect(readProfile({ id: "x" })).toMatchObject({ kind: "refused", code: "profile-unreadable" });
    expect(readProfile({ id: "x", spans: [{ hours: 2, on: [{ classes: ["lamp"] }] }] })).toMatchObject({
      kind: "refused",
    });
    expect(readProfile({ id: "x", spans: [{ hours: 2, on: [] }], more: 1 })).toMatchObject({ kind: "known" });
  });
});

describe("what is on in a profile", () => {
  const record = demoRecord();
  const index = indexRecord(record);

  it("a detector is never off, whatever the profile says", () => {
    const [use] = spanUses(index, profile([{ hours: 1, on: [] }]));
    const detectors = [...index.circuits.values()].filter((circuit) =>
      circuit.loads?.some((id) => index.loads.get(id)?.class === "detector"),
    );
    expect(detectors.length).toBeGreaterThan(0);
    for (const circuit of detectors) expect(use!.circuits.get(circuit.id)).toEqual({ shareRatio: 1, dutyRatio: 1 });
    expect(use!.circuits.size).toBe(detectors.length);
  });

  it("a circuit named wins over its class; the record's own profile replaces the common one of its name", () => {
    const first = [...index.circuits.values()].find(
      (circuit) => index.loads.get(circuit.loads?.[0] ?? "")?.class === "led-resistor",
    )!;
    const spans = [
      { hours: 1, on: [{ circuits: [first.id], shareRatio: 0.2 }, { classes: ["led-resistor" as const] }] },
    ];
    expect(spanUses(index, profile(spans))[0]!.circuits.get(first.id)).toEqual({ shareRatio: 0.2, dutyRatio: 1 });
    const own = { ...record, endurance: { profiles: [{ id: "night", name: "ours", spans }] } } as CoachRecord;
    expect(profilesOf(indexRecord(own)).get("night")?.name).toBe("ours");
  });

  it("a duty counts only where the channel dims as the switches stand: none on relay modules", () => {
    const spans = [{ hours: 1, on: [{ classes: ["led-resistor" as const], dutyRatio: 0.3 }] }];
    expect([...index.circuits.values()].some((circuit) => isDimmingChannel(index, circuit))).toBe(false);
    for (const use of spanUses(index, profile(spans))[0]!.circuits.values()) expect(use.dutyRatio).toBe(1);
  });

  it("a load on a plain fuse stands by for the time that it is off; one on a module does not", () => {
    const draws = standingDraws(index, () => 0).filter((draw) => draw.kind === "standby");
    expect(draws.length).toBeGreaterThan(0);
    for (const draw of draws) expect(index.circuits.get(draw.circuit!)?.module).toBeUndefined();
    const half = standingDraws(index, () => 0.5).filter((draw) => draw.kind === "standby");
    expect(half[0]!.currentA).toBeCloseTo(draws[0]!.currentA / 2, 12);
  });
});

describe("parasitic draw", () => {
  it("the stored profile and the sum of what draws with everything off agree, within 2 % of the hours", () => {
    for (const record of [demoRecord(), clean()]) {
      const index = indexRecord(record);
      const parasitic = parasiticOf(index);
      const run = enduranceOf(index, "stored", { reserveRatio: 0 });
      if (parasitic.kind !== "known" || run.kind !== "known") throw new Error("known");
      const hours = parasitic.value.hoursToFlat.nominal;
      expect(Math.abs(run.value.hours.nominal - hours) / hours).toBeLessThan(0.02);
    }
  });

  it("names every module, and says of each figure how it is known", () => {
    const index = indexRecord(demoRecord());
    const found = parasiticOf(index);
    if (found.kind !== "known") throw new Error("known");
    const modules = found.value.draws.filter((draw) => draw.kind === "module").map((draw) => draw.id);
    expect(modules.sort()).toEqual([...index.modules.keys()].sort());
    for (const draw of found.value.draws) {
      expect(draw.basis !== undefined || draw.source.how === "memory").toBe(true);
      expect(draw.span.lo).toBeLessThanOrEqual(draw.currentA);
      expect(draw.span.hi).toBeGreaterThanOrEqual(draw.currentA);
    }
    expect(found.value.totalA).toBeCloseTo(
      found.value.draws.reduce((sum, draw) => sum + draw.currentA, 0),
      12,
    );
  });

  it("detectors count in full and are never offered to be switched off: they are drawn with everything off", () => {
    const found = parasiticOf(indexRecord(demoRecord()));
    if (found.kind !== "known") throw new Error("known");
    expect(found.value.draws.filter((draw) => draw.kind === "detector").length).toBe(3);
  });
});

describe("what is said of a run", () => {
  it("every stand-in is listed with its mark; lithium's exponent is marked as memory", () => {
    const record = clean();
    bank(record).chemistry = "lifepo4";
    delete bank(record).peukertExponent;
    const found = refusal(record, "evening");
    if (found.kind !== "known") throw new Error(JSON.stringify(found));
    const exponent = found.value.assumed.find((one) => one.path.endsWith(".peukertExponent"));
    expect(exponent).toMatchObject({ value: 1.02, source: { how: "memory" } });
    expect(found.value.reserveRatio).toBe(0.2);
  });

  it("a load whose draw is not known is named, and the least hours cover what its fuse may carry", () => {
    const record = clean();
    const load = record.loads!.find((one) => one.class === "led-resistor" || one.class === "filament")!;
    const was = refusal(record, "evening");
    delete load.currentA;
    delete load.powerW;
    const now = refusal(record, "evening");
    if (was.kind !== "known" || now.kind !== "known") throw new Error("known");
    expect(now.value.leftOut.join(" ")).toMatch(/loads\[\d+\]\.currentA/);
    expect(now.value.hours.span.lo).toBeLessThan(was.value.hours.span.lo);
  });

  it("few dozens of solves: at most 60 for a night of 60 circuits", () => {
    const found = refusal(generateCoach({ seed: 3, circuits: 60 }).record, "night");
    expect(found.kind === "known" && found.value.solves).toBeLessThanOrEqual(60);
  });
});
