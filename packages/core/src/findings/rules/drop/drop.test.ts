import { describe, expect, it } from "vitest";
import { findingsOf, verdictsOf } from "../../test-coach.js";
import { read, solvedCoach } from "../../test-solved-coach.js";

const lamp = (currentA: object, more: object = {}) => ({ class: "led-linear", currentA, ...more });
/** The load asked about draws 5 A; beside it 10 A run, so 15 A in the feeder of 0.01 ohm: 0.15 V, and 5 A x (wire out + 0.03 ohm). */
const beside = { load: lamp(read(10)) };
const coach = (load: object, outOhm = read(0.05), more: Readonly<Record<string, object>> = {}) =>
  solvedCoach([{ load, outOhm }, beside], more);
const first = (found: string[]) => found.filter((told) => told.startsWith("l1 "));

describe("drop-over-limit", () => {
  it("lets a general load lose 10 %, 1.2 V: 0.55 V holds, 1.8 V fails, 1.3 V known to 0.25 V is open", () => {
    const at = (outOhm: ReturnType<typeof read>) => first(verdictsOf("drop-over-limit", coach(lamp(read(5)), outOhm)));
    expect(at(read(0.05))).toEqual(["l1 holds"]);
    expect(at(read(0.3))).toEqual(["l1 fails"]);
    expect(at(read(0.2, 0.05))).toEqual(["l1 open"]);
  });
  it("lets a critical load lose 3 %, 0.36 V, and mends it; a general one it only watches", () => {
    const [critical] = findingsOf("drop-over-limit", coach(lamp(read(5), { isCritical: true })));
    expect(critical).toMatchObject({ verdict: "fails", severity: "mend", source: { id: "abyc-vdrop" } });
    // (0.05 + 0.03) ohm x 5 A + 0.01 ohm x 15 A
    expect(critical?.parameters.got).toBeCloseTo(0.55, 6);
    expect(critical?.parameters.limit).toBeCloseTo(0.36, 9);
    const [general] = findingsOf("drop-over-limit", coach(lamp(read(5)), read(0.3)));
    expect(general).toMatchObject({ verdict: "fails", severity: "watch", parameters: { most: "wire" } });
  });
  it("names the reading that narrows the drop most: the wire that nobody measured", () => {
    const guessed = { value: 0.2, basis: "assumed" } as unknown as ReturnType<typeof read>;
    const [found] = findingsOf("drop-over-limit", coach(lamp(read(5)), guessed));
    expect(found).toMatchObject({ verdict: "open" });
    expect(found?.settledBy[0]).toMatchObject({ path: "circuits[0].out.resistanceOhm", instrument: "ohmmeter" });
  });
});

describe("feeder-drop-over-limit", () => {
  // 15 A; 3 % of 12 V is 0.36 V, so 0.024 ohm.
  const at = (resistanceOhm: object) =>
    verdictsOf("feeder-drop-over-limit", coach(lamp(read(5)), read(0.05), { feeder: { resistanceOhm } }));
  it("holds at 0.02 ohm, fails at 0.03 ohm, is open at 0.024 ohm known to 0.004", () => {
    expect(at(read(0.02))).toEqual(["m1 holds"]);
    expect(at(read(0.03))).toEqual(["m1 fails"]);
    expect(at(read(0.024, 0.004))).toEqual(["m1 open"]);
  });
});

describe("voltage-under-minimum", () => {
  // 12 V - 0.55 V = 11.45 V at the load.
  const at = (minV: number, openCircuitV = read(12)) =>
    verdictsOf("voltage-under-minimum", coach(lamp(read(5), { minV }), read(0.05), { battery: { openCircuitV } }));
  it("holds for 11.4 V, fails for 11.5 V, is open for 11.45 V of a battery known to 0.1 V", () => {
    expect(at(11.4)).toEqual(["l1 holds"]);
    expect(at(11.5)).toEqual(["l1 fails"]);
    expect(at(11.45, read(12, 0.1))).toEqual(["l1 open"]);
  });
  it("asks a pump again beside the lights alone: two pumps at once never are", () => {
    // Lights 5 A; pumps of 20 A and 10 A. With everything on the feeder of 0.05 ohm loses 1.75 V, with the small pump alone beside the lights 0.75 V.
    const pump = (currentA: number, minV: number) => ({
      load: { class: "pump", currentA: read(currentA), stallA: read(500), minV },
      outOhm: read(0.001),
      backOhm: read(0.001),
    });
    const at = (minV: number) =>
      findingsOf(
        "voltage-under-minimum",
        solvedCoach([{ load: lamp(read(5)) }, pump(20, 1), pump(10, minV)], { feeder: { resistanceOhm: read(0.05) } }),
      ).find((f) => f.subject.id === "l3");
    // 12 - 0.75 - 0.02 = 11.23 V beside the lights, 12 - 1.75 - 0.02 = 10.23 V with everything on.
    expect(at(10)).toMatchObject({ verdict: "holds" });
    expect(at(11)).toMatchObject({ verdict: "fails", severity: "watch", parameters: { state: "everything on" } });
    expect(at(11.5)).toMatchObject({
      verdict: "fails",
      severity: "mend",
      parameters: { state: "busy evening with Load 3" },
    });
  });
});

describe("voltage-over-maximum", () => {
  const charger = {
    id: "s2",
    kind: "charger",
    name: "Charger",
    node: "bus",
    returnNode: "neg",
    outputV: read(14.4),
    ratedA: 50,
  };
  const at = (maxV: number, more: object = {}) => {
    const parts = coach(lamp(read(5), { maxV }));
    return verdictsOf("voltage-over-maximum", { ...parts, supplies: [...parts.supplies, charger], ...more });
  };
  it("takes the charger's volts, since a full battery takes nothing, less the drop of the load alone", () => {
    // 14.4 V - 5 A x (0.05 + 0.03 + 0.01) ohm = 13.95 V
    expect(at(15)).toEqual(["l1 holds"]);
    expect(at(14)).toEqual(["l1 holds"]);
    expect(at(13.9)).toEqual(["l1 fails"]);
  });
  it("is open across the doubt of the charger's volts", () => {
    expect(at(13.9, { supplies: [{ ...charger, outputV: read(14.4, 0.2) }, coach({}).supplies[0]!] })).toEqual([
      "l1 open",
    ]);
  });
  it("is open where the wire to the load is not known, and asks for the charger's volts", () => {
    expect(at(12.5, { circuits: [{ id: "c1", module: "m1", channel: 1, loads: ["l1"] }] })).toEqual(["l1 open"]);
  });
});

describe("no-operating-point", () => {
  const states = (load: object, outOhm: ReturnType<typeof read>) =>
    findingsOf("no-operating-point", solvedCoach([{ load, outOhm }])).map((f) => `${f.verdict} ${f.parameters.state}`);
  const power = (powerW: number) => ({ class: "electronics", powerW: read(powerW), dropOutV: read(1) });
  it("fails where the wire cannot pass the power: 12 V over 0.53 ohm give 68 W at most, 200 W are asked", () => {
    expect(states(power(200), read(0.5))).toEqual(["fails busy evening", "fails everything on"]);
  });
  it("holds for 20 W over the same wire", () => {
    expect(states(power(20), read(0.5))).toEqual(["holds busy evening", "holds everything on"]);
  });
  it("says nothing of a coach without a supply", () => {
    expect(verdictsOf("no-operating-point", {})).toEqual([]);
  });
});

describe("policy-memory-figure", () => {
  it("fails where a class figure from memory stands in, holds where everything was read", () => {
    const at = (more: Readonly<Record<string, object>>) =>
      verdictsOf("policy-memory-figure", coach(lamp(read(5)), read(0.05), more));
    expect(at({})).toEqual(["test holds"]);
    expect(at({ kind: { quiescentA: undefined as unknown as object } })).toEqual(["test fails"]);
  });
});
