import type { Source } from "../quantity/index.js";
import { theTable } from "./catalogue.js";
import { notPublished, numberAt, type Published, published, type Sourced, sourceFor } from "./table.js";

/**
 * Most bits that a frame of the two-wire network can take, stuffing and the gap after it counted: 55 + 10 n with an 11-bit identifier, 80 + 10 n
 * with a 29-bit one (g + 8n + 13 + floor((g + 8n - 1)/4), g 34 or 54). Refused: more than 8 data bytes.
 */
export const frameBits = (dataBytes: number, identifierBits: 11 | 29): Published<number> => {
  if (!Number.isInteger(dataBytes) || dataBytes < 0 || dataBytes > 8)
    return notPublished("bytes-out-of-range", `a frame carries 0 to 8 bytes, got ${dataBytes}`);
  const stuffable = (identifierBits === 11 ? 34 : 54) + 8 * dataBytes;
  return published(stuffable + 13 + Math.floor((stuffable - 1) / 4), sourceFor(theTable("can-frame")));
};

/** How long may the network's cable be at a bit rate, and its branches, m? */
export interface TrunkLimits {
  readonly trunkM: number;
  readonly stubM?: number;
  readonly allStubsM?: number;
}

/** The limits for a bit rate; a rate between two listed ones takes those of the faster. */
export const trunkLimits = (bitRateKbit: number): Published<TrunkLimits> => {
  const table = theTable("can-length");
  const row = [...table.rows].reverse().find((one) => numberAt(table, one, "kbit_s")! >= bitRateKbit);
  if (!(bitRateKbit > 0) || row === undefined)
    return notPublished("bit-rate-not-listed", `no cable length for ${bitRateKbit} kbit/s`);
  const stubM = numberAt(table, row, "single_stub_m");
  const allStubsM = numberAt(table, row, "all_stubs_m");
  const limits = {
    trunkM: numberAt(table, row, "length_m")!,
    ...(stubM === undefined ? {} : { stubM }),
    ...(allStubsM === undefined ? {} : { allStubsM }),
  };
  return published(limits, sourceFor(table, row));
};

const physical = (item: string): Source => {
  const table = theTable("can-phys");
  return sourceFor(
    table,
    table.rows.find((row) => row[0] === item),
  );
};

/** The terminator at each end, ohm, and what it may measure. */
export const terminator = (): Sourced<{ readonly ohm: number; readonly minOhm: number; readonly maxOhm: number }> => ({
  value: { ohm: 120, minOhm: 108, maxOhm: 132 },
  source: physical("termination each end"),
});

/** What is measured between the two wires, unpowered, with so many terminators fitted, ohm: 60 with two, 120 with one, 40 with three. */
export const terminatedOhm = (terminators: number): Published<number> =>
  Number.isInteger(terminators) && terminators > 0
    ? published(terminator().value.ohm / terminators, physical("measured, unpowered, both fitted"))
    : notPublished("no-terminator", "without a terminator nothing sets what is measured");

/** Resistance of the network's cable, ohm per metre of one wire. */
export const trunkOhmPerM = (): Sourced<number> => ({ value: 0.07, source: physical("cable resistance") });

/** Addresses that a device of SAE J1939-81 may claim, and those that mean no device and all devices. */
export const j1939Addresses = (): Sourced<{
  readonly first: number;
  readonly last: number;
  readonly none: number;
  readonly all: number;
}> => ({
  value: { first: 0, last: 253, none: 254, all: 255 },
  source: sourceFor(theTable("j1939-name")),
});
