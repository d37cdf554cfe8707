import { describe, expect, it } from "vitest";
import type { FindingCode } from "../../codes.js";
import { findingsOf, verdictsOf } from "../../test-coach.js";
import { read, solvedCoach } from "../../test-solved-coach.js";

/** A lamp behind a linear regulator draws the same at any volts of a coach that works. */
const lamp = (currentA: object | undefined) => ({ load: { class: "led-linear", ...(currentA && { currentA }) } });
const pump = (currentA: object) => ({ load: { class: "pump", currentA, stallA: read(200) } });
/** 5 A and 10 A of lamps, the second known to 2 A. */
const lamps = (second = read(10)) => [lamp(read(5)), lamp(second)];
/** Lamps of 5 A, pumps of 10 A and 8 A: 15 A in a busy evening, 23 A with everything on. */
const mixed = [lamp(read(5)), pump(read(10)), pump(read(8))];

const told = (code: FindingCode, parts: Readonly<Record<string, unknown>>) =>
  findingsOf(code, parts).map(({ verdict, severity, parameters }) => `${verdict} ${severity} ${parameters.state}`);

describe("channel-over-rating", () => {
  it("compares what the loads draw with the switched rating of 10 A", () => {
    const at = (currentA: object) =>
      verdictsOf("channel-over-rating", solvedCoach([lamp(currentA)], { kind: { ratedSwitchedA: 10 } }));
    expect(at(read(9, 0.5))).toEqual(["c1 holds"]);
    expect(at(read(11, 0.5))).toEqual(["c1 fails"]);
    expect(at(read(10, 0.5))).toEqual(["c1 open"]);
  });
});

describe("relay-contact-derating", () => {
  // FAA AC 43.13-1B table 11-4, 12 V: lamps 5 times, motors 2 times what they draw.
  const at = (load: object, ratedSwitchedA: unknown) =>
    verdictsOf("relay-contact-derating", solvedCoach([{ load }], { kind: { ratedSwitchedA } }));
  it("wants 10 A for a filament of 2 A, 20 A for a pump of 10 A", () => {
    expect(at({ class: "filament", currentA: read(2) }, 10)).toEqual(["c1 holds"]);
    expect(at({ class: "filament", currentA: read(2.5) }, 10)).toEqual(["c1 fails"]);
    expect(at({ class: "pump", currentA: read(10) }, 15)).toEqual(["c1 fails"]);
    expect(at({ class: "filament", currentA: read(2, 0.2) }, 10)).toEqual(["c1 open"]);
  });
  it("says nothing of LEDs, for which the table has no row", () => {
    expect(at({ class: "led-linear", currentA: read(9) }, 10)).toEqual([]);
  });
});

describe("module-over-rating", () => {
  const at = (circuits: Parameters<typeof solvedCoach>[0], ratedTotalA: unknown) =>
    told("module-over-rating", solvedCoach(circuits, { kind: { ratedTotalA } }));
  it("adds up 5 A and 10 A: holds on 16 A, fails on 14 A, is open on 15 A while the second is known to 2 A", () => {
    expect(at(lamps(), 16)).toEqual(["holds mend busy evening"]);
    expect(at(lamps(), 14)).toEqual(["fails mend busy evening"]);
    expect(at(lamps(read(10, 2)), 15)).toEqual(["open mend busy evening"]);
  });
  it("only watches a total that is too much with everything on and not in a busy evening", () => {
    expect(at(mixed, 18)).toEqual(["fails watch everything on"]);
    expect(at(mixed, 14)).toEqual(["fails mend busy evening"]);
    expect(at(mixed, 24)).toEqual(["holds mend busy evening"]);
  });
  it("fails on what is known alone, never holds while a draw is missing", () => {
    const unknown = [lamp(read(5)), lamp(read(10)), lamp(undefined)];
    expect(at(unknown, 14)).toEqual(["fails mend busy evening"]);
    expect(at(unknown, 50)).toEqual([]);
  });
});

describe("feeder-over-ampacity, feeder-over-device and busbar-over-rating", () => {
  // 33 CFR 183 table 5: 18 AWG, 105 C, alone at 30 C: 20 A.
  const wire = { gauge: "18 AWG", insulationC: 105, bundleCount: 1, zone: "cabin" };
  const twice = [lamp(read(15)), lamp(read(15))];
  it("holds the cable's current against 20 A on 18 AWG of 105 C", () => {
    expect(told("feeder-over-ampacity", solvedCoach(lamps(), { feeder: wire }))).toEqual(["holds mend busy evening"]);
    expect(told("feeder-over-ampacity", solvedCoach(mixed, { feeder: wire }))).toEqual(["fails watch everything on"]);
    expect(told("feeder-over-ampacity", solvedCoach(twice, { feeder: wire }))).toEqual(["fails mend busy evening"]);
    expect(told("feeder-over-ampacity", solvedCoach(lamps(read(15, 2)), { feeder: wire }))).toEqual([
      "open mend busy evening",
    ]);
  });
  it("names the table and every factor that the ampacity rests on", () => {
    const hot = { ...wire, zone: "engine", bundleCount: 4 };
    const [found] = findingsOf("feeder-over-ampacity", solvedCoach(twice, { feeder: hot }));
    expect(found?.source.id).toBe("cfr183-t5");
    expect(found?.alsoRestsOn).toHaveLength(2);
  });
  it("holds the cable's current against its own device", () => {
    const at = (ratedA: number, second = read(10)) =>
      told(
        "feeder-over-device",
        solvedCoach(lamps(second), { feeder: { protection: { ratedA, resistanceOhm: read(0) } } }),
      );
    expect(at(20)).toEqual(["holds mend busy evening"]);
    expect(at(10)).toEqual(["fails mend busy evening"]);
    expect(at(15, read(10, 1))).toEqual(["open mend busy evening"]);
  });
  it("holds what runs over a bar against its rating", () => {
    const at = (ratedA: number, second = read(10)) =>
      told("busbar-over-rating", solvedCoach(lamps(second), { bar: { ratedA } }));
    expect(at(20)).toEqual(["holds mend busy evening"]);
    expect(at(10)).toEqual(["fails mend busy evening"]);
    expect(at(15, read(10, 1))).toEqual(["open mend busy evening"]);
  });
});
