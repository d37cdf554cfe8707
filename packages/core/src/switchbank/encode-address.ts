import { known, missing, type Outcome, refused } from "../quantity/index.js";
import type { AddressCode } from "../record/index.js";
import { addressCodeFaults } from "./address-code-faults.js";
import { bitsOf, fromGray, grayOf } from "./gray.js";

/** One switch of the row and how it must stand: 1 is ON, 0 is OFF. */
export interface SwitchPosition {
  readonly switch: number;
  readonly position: 0 | 1;
}

/**
 * How must the address switches stand for this address? Switches in ascending order; switches that do not count are not in the list.
 * Refused: the code itself is faulty (the first fault's code, see `addressCodeFaults`), or `address-out-of-range`: no setting gives that address.
 * Missing: the table does not list the address though it may exist.
 */
export function encodeAddress(code: AddressCode, address: number): Outcome<readonly SwitchPosition[]> {
  const fault = addressCodeFaults(code)[0];
  if (fault) return refused(fault.code, fault.message);
  if (!Number.isInteger(address) || address < 0)
    return refused("address-out-of-range", `an address is a whole number from 0 up, got ${address}`);
  if (code.kind === "table") {
    const row = code.rows.find((each) => each.address === address);
    if (!row) return missing(`bank.address.rows[address=${address}]`);
    return known(
      inOrder(code.switches.map((number, i) => ({ switch: number, position: row.positions[i] === "1" ? 1 : 0 }))),
    );
  }
  const value = address - code.firstAddress;
  const reach = code.switches.reduce((sum, each) => sum + each.weight, 0);
  const coded = value < 0 || bitsOf(value) > 16 ? -1 : code.coding === "gray" ? grayOf(value) : value;
  // A weight that no switch carries leaves a bit that cannot be set.
  if (coded < 0 || (coded & ~reach) !== 0)
    return refused(
      "address-out-of-range",
      `the code gives ${rangeText(code.firstAddress, reach, code.switches.length)}, got ${address}; pick another address`,
    );
  return known(
    inOrder(
      code.switches.map((each) => ({
        switch: each.switch,
        position: (coded & each.weight) !== 0 ? each.onMeans : each.onMeans === 1 ? 0 : 1,
      })),
    ),
  );
}

const inOrder = (list: SwitchPosition[]): SwitchPosition[] => list.sort((a, b) => a.switch - b.switch);

const rangeText = (first: number, reach: number, count: number): string =>
  reach === 2 ** count - 1
    ? `addresses ${first} to ${first + reach}`
    : `${2 ** count} addresses from ${first} up, with gaps`;

/** Every address the code can give, in ascending order; empty where the code is faulty. */
export function addressesOf(code: AddressCode): number[] {
  if (addressCodeFaults(code).length > 0) return [];
  if (code.kind === "table") return code.rows.map((row) => row.address).sort((a, b) => a - b);
  return addressesWhere(code, () => undefined);
}

/** Addresses of a sound weights code over the switches whose position is fixed by `positionOf` (undefined: either way). */
export function addressesWhere(
  code: Extract<AddressCode, { kind: "weights" }>,
  positionOf: (switchNumber: number) => 0 | 1 | undefined,
): number[] {
  let codedValues = [0];
  for (const each of code.switches) {
    const position = positionOf(each.switch);
    if (position === undefined) codedValues = codedValues.flatMap((value) => [value, value + each.weight]);
    else if (position === each.onMeans) codedValues = codedValues.map((value) => value + each.weight);
  }
  return codedValues
    .map((value) => code.firstAddress + (code.coding === "gray" ? fromGray(value) : value))
    .sort((a, b) => a - b);
}
