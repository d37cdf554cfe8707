import { describe, expect, it } from "vitest";
import { findingsOf, verdictsOf } from "../../test-coach.js";

/** Four switches; switch 1 counts 1, switch 2 counts 2, OFF counts; address 10 is the coded value 0. Switch 4 at 1 enables block b1. */
const KIND = {
  id: "D4",
  name: "D4",
  channels: 4,
  output: "pwm",
  dimBlocks: [{ id: "b1", channels: [1, 2] }],
  bank: {
    switches: 4,
    address: {
      kind: "weights",
      coding: "binary",
      firstAddress: 10,
      switches: [
        { switch: 1, weight: 1, onMeans: 0 },
        { switch: 2, weight: 2, onMeans: 0 },
      ],
    },
    options: [
      { enables: [], set: [{ switch: 4, position: 0 }] },
      { enables: ["b1"], set: [{ switch: 4, position: 1 }] },
    ],
  },
};
const coach = (...modules: object[]) => ({ moduleKinds: [KIND], modules });

describe("duplicate-address", () => {
  it("fails on the later module; what it was seen to answer to counts for more than what the program uses", () => {
    expect(
      verdictsOf(
        "duplicate-address",
        coach(
          { id: "m1", address: 10 },
          { id: "m2", address: 10 },
          { id: "m3", address: 10, answersTo: 11 },
          { id: "m4", address: 12, answersTo: 11 },
          { id: "m5" },
        ),
      ),
    ).toEqual(["m1 holds", "m2 fails", "m3 holds", "m4 fails"]);
  });
});

describe("address-unknown", () => {
  it("is open, settled by a look at the switches, where neither the program's nor the seen address is known", () => {
    const found = findingsOf(
      "address-unknown",
      coach({ id: "m1", address: 10 }, { id: "m2", answersTo: 11 }, { id: "m3" }),
    );
    expect(found.map((f) => f.verdict)).toEqual(["holds", "holds", "open"]);
    expect(found[2]?.settledBy).toMatchObject([{ path: "modules[2].positionsFound", instrument: "look" }]);
  });
});

describe("address-out-of-range", () => {
  it("holds for 10 to 13, which two switches from 10 can give, and fails for 14", () => {
    expect(
      verdictsOf(
        "address-out-of-range",
        coach({ id: "m1", kind: "D4", address: 13 }, { id: "m2", kind: "D4", address: 14 }, { id: "m3", address: 99 }),
      ),
    ).toEqual(["m1 holds", "m2 fails"]);
  });
});

describe("address-not-as-programmed", () => {
  it("fails where it answers to another address than the program uses", () => {
    expect(
      verdictsOf(
        "address-not-as-programmed",
        coach(
          { id: "m1", address: 10, answersTo: 10 },
          { id: "m2", address: 10, answersTo: 11 },
          { id: "m3", address: 12 },
        ),
      ),
    ).toEqual(["m1 holds", "m2 fails"]);
  });
});

describe("address-not-shown-by-switches", () => {
  // Address 11 is the value 1: switch 1 counts, so it stands OFF (0); switch 2 does not, so it stands ON (1).
  const module = (id: string, positionsFound?: string) => ({
    id,
    kind: "D4",
    address: 11,
    ...(positionsFound === undefined ? {} : { positionsFound }),
  });
  it("holds, fails or is open as the switches that count stand", () => {
    expect(
      verdictsOf(
        "address-not-shown-by-switches",
        coach(module("m1", "0100"), module("m2", "1100"), module("m3", "?100"), module("m4", "?000"), module("m5")),
      ),
    ).toEqual(["m1 holds", "m2 fails", "m3 open", "m4 fails", "m5 open"]);
  });
  it("says which address the switches do give", () => {
    // 1100: neither counts, the value is 0, the address 10.
    const [found] = findingsOf("address-not-shown-by-switches", coach(module("m2", "1100")));
    expect(found?.parameters).toMatchObject({ address: 11, found: "1100", shows: "10", wrong: "1" });
  });
});

describe("bank-code-missing and bank-code-faulty", () => {
  it("is open for a kind in use without a code; says nothing of kinds not in use", () => {
    expect(
      verdictsOf("bank-code-missing", {
        moduleKinds: [KIND, { id: "R8", name: "R8", channels: 8 }, { id: "X", name: "X", channels: 8 }],
        modules: [
          { id: "m1", kind: "D4" },
          { id: "m2", kind: "R8" },
        ],
      }),
    ).toEqual(["D4 holds", "R8 open"]);
  });
  it("fails for a code that gives one weight to two switches", () => {
    const twice = [
      { switch: 1, weight: 1, onMeans: 0 },
      { switch: 2, weight: 1, onMeans: 0 },
    ];
    const faulty = { ...KIND, id: "F", bank: { ...KIND.bank, address: { ...KIND.bank.address, switches: twice } } };
    expect(verdictsOf("bank-code-faulty", { moduleKinds: [KIND, faulty] })).toEqual(["D4 holds", "F fails"]);
  });
});

describe("option-setting-unknown", () => {
  it("holds where one setting fits, is open where the option switch was not read, fails where none fits", () => {
    const gap = { ...KIND, id: "G", bank: { ...KIND.bank, options: [KIND.bank.options[0]] } };
    expect(
      verdictsOf("option-setting-unknown", {
        moduleKinds: [KIND, gap, { id: "R8", name: "R8", channels: 8, output: "relay" }],
        modules: [
          { id: "m1", kind: "D4", positionsFound: "0101" },
          { id: "m2", kind: "D4", positionsFound: "010?" },
          { id: "m3", kind: "D4" },
          { id: "m4", kind: "G", positionsFound: "0101" },
          { id: "m5", kind: "R8", positionsFound: "0101" },
        ],
      }),
    ).toEqual(["m1 holds", "m2 open", "m3 open", "m4 fails"]);
  });
});

describe("network-address-not-on-record", () => {
  it("fails for an address seen that no module has", () => {
    const found = findingsOf("network-address-not-on-record", {
      ...coach({ id: "m1", address: 10 }),
      network: { addressesSeen: [10, 77] },
    });
    expect(found.map((f) => [f.subject.path, f.verdict])).toEqual([
      ["network.addressesSeen[0]", "holds"],
      ["network.addressesSeen[1]", "fails"],
    ]);
  });
});
