import { describe, expect, it } from "vitest";
import { findingsOf, verdictsOf } from "../../test-coach.js";

const read = (value: number, plusMinus: number) => ({ value, basis: "measured", plusMinus });

describe("no-supply", () => {
  it("is open until every supply says where both its ends connect, and one is a battery", () => {
    const battery = { id: "s1", kind: "battery", name: "House" };
    expect(findingsOf("no-supply", {})[0]?.verdict).toBe("open");
    expect(findingsOf("no-supply", { supplies: [battery] })[0]).toMatchObject({
      verdict: "open",
      settledBy: [{ path: "supplies[0].node" }, { path: "supplies[0].returnNode" }],
    });
    expect(findingsOf("no-supply", { supplies: [{ ...battery, node: "bus" }] })[0]?.verdict).toBe("open");
    expect(findingsOf("no-supply", { supplies: [{ ...battery, node: "bus", returnNode: "neg" }] })[0]?.verdict).toBe(
      "holds",
    );
  });
});

describe("supply-voltage-odd", () => {
  // 12 V: from 9.6 V (four fifths) to 15 V (five quarters).
  const at = (outputV: object) =>
    verdictsOf("supply-voltage-odd", { supplies: [{ id: "s1", kind: "charger", name: "Charger", outputV }] });
  it("holds for 14.4 V, fails for 27.6 V, is open across 15 V", () => {
    expect(at(read(14.4, 0.1))).toEqual(["s1 holds"]);
    expect(at(read(27.6, 0.1))).toEqual(["s1 fails"]);
    expect(at(read(15, 0.1))).toEqual(["s1 open"]);
    expect(at(read(9, 0.1))).toEqual(["s1 fails"]);
  });
});

describe("termination-wrong", () => {
  // Two of 108 to 132 ohm side by side: 54 to 66 ohm.
  const at = (network: object) => verdictsOf("termination-wrong", { network });
  it("holds for 60 ohm, fails for 120 and 40 ohm, is open across 66 ohm", () => {
    expect(at({ betweenWiresOhm: read(60, 1) })).toEqual(["network holds"]);
    expect(at({ betweenWiresOhm: read(120, 1) })).toEqual(["network fails"]);
    expect(at({ betweenWiresOhm: read(40, 1) })).toEqual(["network fails"]);
    expect(at({ betweenWiresOhm: read(66, 1) })).toEqual(["network open"]);
  });
  it("counts terminators where nobody measured; the meter counts for more", () => {
    const two = [{ at: "a" }, { at: "b" }];
    expect(at({ terminators: two })).toEqual(["network holds"]);
    expect(at({ terminators: two.slice(1) })).toEqual(["network fails"]);
    expect(at({})).toEqual(["network open"]);
    expect(at({ terminators: two, betweenWiresOhm: read(120, 1) })).toEqual(["network fails"]);
  });
});

describe("network-too-long", () => {
  // CiA 301: 250 m at 250 kbit/s, 500 m at 125 kbit/s.
  const at = (bitRateKbit: number | undefined, ...lengthsM: object[]) =>
    verdictsOf("network-too-long", {
      network: {
        trunk: lengthsM.map((toNextM) => ({ at: "here", toNextM })),
        ...(bitRateKbit === undefined ? {} : { bitRateKbit }),
      },
    });
  it("adds up the trunk: 240 m hold at 250 kbit/s, 260 m fail there and hold at 125 kbit/s", () => {
    expect(at(250, read(120, 1), read(120, 1))).toEqual(["network holds"]);
    expect(at(250, read(130, 1), read(130, 1))).toEqual(["network fails"]);
    expect(at(125, read(130, 1), read(130, 1))).toEqual(["network holds"]);
    expect(at(250, read(125, 1), read(125, 1))).toEqual(["network open"]);
  });
  it("is open without a bit rate, and asks for it", () => {
    expect(at(undefined, read(20, 1))).toEqual(["network open"]);
  });
});
