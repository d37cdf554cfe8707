import { describe, expect, it } from "vitest";
import type { Bank } from "../record/index.js";
import { bankPositions, readBank } from "./bank-positions.js";
import { checkFound } from "./check-found.js";
import { gapsAndDuplicates } from "./coach-addresses.js";
import { decodeAddress } from "./decode-address.js";
import { readOption } from "./read-option.js";
import { validateBank } from "./validate-bank.js";

/** Seven switches: 1, 3, 4, 2 carry 1, 2, 4, 8; switch 3 counts when OFF; 5 and 6 are options; 7 stays OFF. Addresses from 1. */
const bank = {
  switches: 7,
  address: {
    kind: "weights",
    coding: "binary",
    firstAddress: 1,
    switches: [
      { switch: 1, weight: 1, onMeans: 1 },
      { switch: 3, weight: 2, onMeans: 0 },
      { switch: 4, weight: 4, onMeans: 1 },
      { switch: 2, weight: 8, onMeans: 1 },
    ],
  },
  options: [
    {
      enables: [],
      set: [
        { switch: 5, position: 0 },
        { switch: 6, position: 0 },
      ],
    },
    {
      enables: ["b1"],
      set: [
        { switch: 5, position: 1 },
        { switch: 6, position: 0 },
      ],
    },
    {
      enables: ["b1", "b2"],
      set: [
        { switch: 5, position: 1 },
        { switch: 6, position: 1 },
      ],
    },
  ],
  unused: [{ switch: 7, position: 0 }],
} as unknown as Bank;

const changed = (fields: object): Bank => ({ ...bank, ...fields }) as unknown as Bank;

describe("bankPositions", () => {
  it("merges address, option and unused switches into one row", () => {
    // By hand: address 12 is 11 = 8 + 2 + 1: switch 2 ON, switch 3 OFF (counts when OFF), switch 1 ON, switch 4 OFF; both blocks: 5 and 6 ON.
    expect(bankPositions(bank, { address: 12, enables: ["b2", "b1"] })).toEqual({ kind: "known", value: "1100110" });
    // Address 1 is 0: only the switch that counts when OFF is ON.
    expect(bankPositions(bank, { address: 1, enables: [] })).toEqual({ kind: "known", value: "0010000" });
  });

  it("refuses an address that no setting gives and an option that is not listed", () => {
    expect(bankPositions(bank, { address: 0, enables: [] })).toMatchObject({ code: "address-out-of-range" });
    expect(bankPositions(bank, { address: 17, enables: [] })).toMatchObject({ code: "address-out-of-range" });
    expect(bankPositions(bank, { address: 3, enables: ["b2"] })).toMatchObject({
      kind: "refused",
      code: "option-not-listed",
    });
  });

  it("names what is lacking instead of guessing", () => {
    const needsOf = (of: Bank | undefined, address: number | undefined, enables: string[] = []) => {
      const got = bankPositions(of, { address, enables });
      return got.kind === "missing" ? got.needs : got;
    };
    expect(needsOf(undefined, 3)).toEqual(["bank"]);
    expect(needsOf(bank, undefined)).toEqual(["address"]);
    expect(needsOf(changed({ unused: undefined }), 3)).toEqual(["bank.unused[switch=7]"]);
    expect(needsOf(changed({ options: undefined }), 3, ["b1"])).toContain("bank.options");
    expect(needsOf(changed({ options: undefined }), 3)).toEqual(["bank.unused[switch=5]", "bank.unused[switch=6]"]);
    expect(needsOf(changed({ address: undefined }), 3)).toContain("bank.address");
    expect(
      needsOf(changed({ options: [{ enables: [], set: [{ switch: 5, position: 0 }] }, bank.options![1]] }), 3),
    ).toEqual(["bank.options[0].set[switch=6]"]);
  });

  it("asks for the row of a table that does not list the address", () => {
    const table = {
      switches: 2,
      address: { kind: "table", switches: [2, 1], rows: [{ address: 9, positions: "10" }] },
    } as Bank;
    expect(bankPositions(table, { address: 9, enables: [] })).toEqual({ kind: "known", value: "01" });
    expect(bankPositions(table, { address: 8, enables: [] })).toEqual({
      kind: "missing",
      needs: ["bank.address.rows[address=8]"],
    });
  });

  it("refuses two rules that want one switch differently, and faulty codes", () => {
    const clash = changed({
      unused: [
        { switch: 7, position: 0 },
        { switch: 5, position: 0 },
      ],
    });
    expect(bankPositions(clash, { address: 3, enables: ["b1"] })).toMatchObject({
      kind: "refused",
      code: "switches-in-conflict",
    });
    const twice = changed({
      address: {
        ...bank.address,
        switches: [
          { switch: 1, weight: 2, onMeans: 1 },
          { switch: 2, weight: 2, onMeans: 1 },
        ],
      },
    });
    expect(bankPositions(twice, { address: 1, enables: [] })).toMatchObject({ kind: "refused", code: "weight-twice" });
    expect(bankPositions(changed({ switches: 6 }), { address: 3, enables: [] })).toMatchObject({
      kind: "refused",
      code: "switch-outside-bank",
    });
  });

  it("shows the part of a row that is known already", () => {
    const reading = readBank(changed({ unused: undefined }), { address: undefined, enables: ["b1"] });
    expect(reading.kind === "known" && reading.value.positions).toBe("????10?");
  });
});

describe("readOption", () => {
  it("reads the enabled blocks off the row, and says which switch would settle it", () => {
    expect(readOption(bank, "0000110")).toEqual({ kind: "known", value: ["b1", "b2"] });
    expect(readOption(bank, "????000")).toEqual({ kind: "known", value: [] });
    expect(readOption(bank, "00001?0")).toEqual({ kind: "missing", needs: ["positions[6]"] });
    expect(readOption(bank, "0000010")).toMatchObject({ kind: "refused", code: "option-not-listed" });
    expect(readOption(changed({ options: undefined }), "0000000")).toEqual({
      kind: "missing",
      needs: ["bank.options"],
    });
  });
});

describe("checkFound", () => {
  it("names each switch that stands wrong for the address, and the address that the row shows", () => {
    const check = checkFound(bank, "0110000", { address: 12, enables: ["b1"] });
    expect(check.verdict).toBe("differ");
    expect(check.wrong).toEqual([
      { switch: 1, found: 0, wanted: 1 },
      { switch: 3, found: 1, wanted: 0 },
      { switch: 5, found: 0, wanted: 1 },
    ]);
    // Switch 2 counts 8, from address 1: 9.
    expect(check.shows).toEqual({ kind: "known", value: [9] });
  });

  it("agrees only when every switch that a rule claims was read", () => {
    expect(checkFound(bank, "1100110", { address: 12, enables: ["b1", "b2"] }).verdict).toBe("agree");
    expect(checkFound(bank, "110?110", { address: 12, enables: ["b1", "b2"] })).toMatchObject({
      verdict: "cannot-tell",
      needs: ["positions[4]"],
    });
    expect(checkFound(bank, "1100110", { address: undefined }).verdict).toBe("cannot-tell");
  });

  it("asks about the address alone where no blocks are given", () => {
    expect(checkFound(bank, "1100???", { address: 12 }).verdict).toBe("agree");
  });

  it("says differ for an address that no setting gives", () => {
    expect(checkFound(bank, "1100110", { address: 40 }).verdict).toBe("differ");
  });
});

describe("validateBank", () => {
  const codes = (of: Bank, blocks?: string[]) => validateBank(of, blocks).map((fault) => `${fault.path} ${fault.code}`);

  it("finds nothing wrong with a sound bank", () => {
    expect(codes(bank, ["b1", "b2"])).toEqual([]);
  });

  it("names every fault by its path", () => {
    const bad = {
      switches: 4,
      printed: ["1", "2"],
      address: {
        kind: "weights",
        coding: "binary",
        firstAddress: 0,
        switches: [
          { switch: 1, weight: 1, onMeans: 1 },
          { switch: 1, weight: 1, onMeans: 1 },
          { switch: 2, weight: 3, onMeans: 1 },
          { switch: 9, weight: 4, onMeans: 1 },
        ],
      },
      options: [
        { enables: ["nope"], set: [{ switch: 2, position: 1 }] },
        { enables: [], set: [{ switch: 2, position: 1 }] },
      ],
      unused: [
        { switch: 4, position: 0 },
        { switch: 4, position: 1 },
      ],
    } as unknown as Bank;
    expect(codes(bad, ["b1"]).sort()).toEqual(
      [
        "address.switches[1].switch switch-twice",
        "address.switches[1].weight weight-twice",
        "address.switches[2].weight weight-not-power-of-two",
        "address.switches[3].switch switch-outside-bank",
        "options[0].enables[0] block-unknown",
        "options[0].set[0].switch switch-claimed-twice",
        "options[1].set[0].switch switch-claimed-twice",
        "options[1].set setting-twice",
        "printed printed-count",
        "unused[1].switch switch-twice",
      ].sort(),
    );
  });

  it("names faults of a table", () => {
    const bad = {
      switches: 3,
      address: {
        kind: "table",
        switches: [1, 2],
        rows: [
          { address: 1, positions: "00" },
          { address: 1, positions: "01" },
          { address: 2, positions: "00" },
          { address: 3, positions: "1?" },
          { address: 4, positions: "110" },
        ],
      },
    } as Bank;
    expect(codes(bad)).toEqual([
      "address.rows[1].address address-twice",
      "address.rows[2].positions positions-twice",
      "address.rows[3].positions row-unread",
      "address.rows[4].positions row-length",
    ]);
    expect(decodeAddress(bad.address!, "000")).toMatchObject({ kind: "refused", code: "address-twice" });
  });
});

describe("gapsAndDuplicates", () => {
  it("finds duplicates, gaps, modules astray, strangers and silent ones", () => {
    const got = gapsAndDuplicates(
      [
        { id: "m1", address: 1 },
        { id: "m2", address: 2, answersTo: 5 },
        { id: "m3", address: 5 },
        { id: "m4" },
        { id: "m5", address: 7 },
      ],
      [1, 5, 9],
    );
    expect(got).toEqual({
      duplicates: [{ address: 5, modules: ["m2", "m3"] }],
      gaps: [2, 3, 4, 6],
      astray: [{ module: "m2", address: 2, answersTo: 5 }],
      unknown: ["m4"],
      strangers: [9],
      silent: ["m5"],
    });
  });
});
