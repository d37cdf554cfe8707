import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { AddressCode } from "../record/index.js";
import { addressCodeFaults } from "./address-code-faults.js";
import { decodeAddress, possibleAddresses } from "./decode-address.js";
import { addressesOf, encodeAddress } from "./encode-address.js";
import { fromGray, grayOf } from "./gray.js";

type WeightsCode = Extract<AddressCode, { kind: "weights" }>;

/** Any weights code: any switches of a row, any distinct powers of two (gaps included), any polarity, any first address. */
const anyWeightsCode: fc.Arbitrary<WeightsCode> = fc
  .record({
    switches: fc.shuffledSubarray([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16], {
      minLength: 1,
      maxLength: 8,
    }),
    weights: fc.shuffledSubarray(
      Array.from({ length: 16 }, (_, i) => 2 ** i),
      { minLength: 8, maxLength: 8 },
    ),
    on: fc.array(fc.constantFrom<0 | 1>(0, 1), { minLength: 8, maxLength: 8 }),
    firstAddress: fc.oneof(fc.constantFrom(0, 1), fc.nat(500)),
    coding: fc.constantFrom<"binary" | "gray">("binary", "gray"),
  })
  .map(({ switches, weights, on, firstAddress, coding }) => ({
    kind: "weights",
    coding,
    firstAddress,
    switches: switches.map((number, i) => ({ switch: number, weight: weights[i]!, onMeans: on[i]! })),
  }));

const anyTableCode: fc.Arbitrary<AddressCode> = fc
  .record({
    switches: fc.shuffledSubarray([1, 2, 3, 4, 5, 6], { minLength: 3, maxLength: 6 }),
    rows: fc.uniqueArray(fc.nat(7), { minLength: 1, maxLength: 8 }),
    addresses: fc.uniqueArray(fc.nat(300), { minLength: 8, maxLength: 8 }),
  })
  .map(({ switches, rows, addresses }) => ({
    kind: "table",
    switches,
    rows: rows.map((row, i) => ({
      address: addresses[i]!,
      positions: row.toString(2).padStart(switches.length, "0"),
    })),
  }));

const rowOf = (positions: readonly { switch: number; position: 0 | 1 }[], rest: string): string =>
  Array.from({ length: 16 }, (_, i) => {
    const here = positions.find((each) => each.switch === i + 1);
    return here ? String(here.position) : rest;
  }).join("");

describe("any bank code", () => {
  it("decodes what it encodes, whatever the switches that do not count say", () => {
    fc.assert(
      fc.property(fc.oneof(anyWeightsCode, anyTableCode), fc.constantFrom("0", "1", "?"), (code, rest) => {
        expect(addressCodeFaults(code)).toEqual([]);
        const addresses = addressesOf(code);
        const rows = new Set<string>();
        for (const address of addresses) {
          const positions = encodeAddress(code, address);
          if (positions.kind !== "known") throw new Error(JSON.stringify(positions));
          const row = rowOf(positions.value, rest);
          rows.add(row);
          expect(decodeAddress(code, row)).toEqual({ kind: "known", value: address });
        }
        expect(rows.size).toBe(addresses.length);
      }),
      { seed: 11, numRuns: 300 },
    );
  });

  it("gives 2^n addresses for n switches that count", () => {
    fc.assert(
      fc.property(anyWeightsCode, (code) => {
        expect(new Set(addressesOf(code)).size).toBe(2 ** code.switches.length);
      }),
      { seed: 12, numRuns: 200 },
    );
  });

  it("keeps the true address among the possible ones when switches were not read, and names them", () => {
    fc.assert(
      fc.property(anyWeightsCode, fc.nat(), fc.nat(), (code, pick, blind) => {
        const addresses = addressesOf(code);
        const address = addresses[pick % addresses.length]!;
        const positions = encodeAddress(code, address);
        if (positions.kind !== "known") throw new Error("encode");
        const unread = positions.value[blind % positions.value.length]!.switch;
        const row = [...rowOf(positions.value, "0")].map((sign, i) => (i + 1 === unread ? "?" : sign)).join("");
        const possible = possibleAddresses(code, row);
        expect(possible.kind === "known" && possible.value).toHaveLength(2);
        expect(possible.kind === "known" && possible.value).toContain(address);
        expect(decodeAddress(code, row)).toEqual({ kind: "missing", needs: [`positions[${unread}]`] });
      }),
      { seed: 13, numRuns: 200 },
    );
  });

  it("refuses an address that no setting gives", () => {
    fc.assert(
      fc.property(anyWeightsCode, fc.integer({ min: -2, max: 70_000 }), (code, address) => {
        const answer = encodeAddress(code, address);
        if (addressesOf(code).includes(address)) expect(answer.kind).toBe("known");
        else expect(answer).toMatchObject({ kind: "refused", code: "address-out-of-range" });
      }),
      { seed: 14, numRuns: 300 },
    );
  });
});

describe("Gray code", () => {
  it("changes one switch from each value to the next and comes back", () => {
    for (let value = 0; value < 65_536; value++) {
      const step = grayOf(value) ^ grayOf(value + 1);
      if ((step & (step - 1)) !== 0) throw new Error(`two switches between ${value} and ${value + 1}`);
      if (fromGray(grayOf(value)) !== value) throw new Error(`${value} does not come back`);
    }
    // The reflected code of the first eight values, typed by hand.
    expect([0, 1, 2, 3, 4, 5, 6, 7].map((value) => grayOf(value).toString(2).padStart(3, "0"))).toEqual([
      "000",
      "001",
      "011",
      "010",
      "110",
      "111",
      "101",
      "100",
    ]);
  });
});
