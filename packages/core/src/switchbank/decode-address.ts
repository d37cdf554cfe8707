import { known, missing, type Outcome, refused } from "../quantity/index.js";
import type { AddressCode } from "../record/index.js";
import { addressCodeFaults } from "./address-code-faults.js";
import { addressesWhere } from "./encode-address.js";

/** How the switch stands in a row of positions; undefined where it was not read (`?`). */
export function positionAt(positions: string, switchNumber: number): 0 | 1 | undefined {
  const sign = positions[switchNumber - 1];
  return sign === "1" ? 1 : sign === "0" ? 0 : undefined;
}

const switchNumbers = (code: AddressCode): number[] =>
  code.kind === "table" ? [...code.switches] : code.switches.map((each) => each.switch);

/**
 * Which addresses may a module with these positions answer to? One where every switch that counts was read, several where some stand as `?`.
 * `positions` is in switch order over the whole row, as the record keeps it.
 * Refused: the code is faulty, `positions-too-short`, or `positions-not-in-table`.
 */
export function possibleAddresses(code: AddressCode, positions: string): Outcome<readonly number[]> {
  const fault = addressCodeFaults(code)[0];
  if (fault) return refused(fault.code, fault.message);
  const highest = Math.max(...switchNumbers(code));
  if (positions.length < highest)
    return refused(
      "positions-too-short",
      `wants ${highest} signs at least, got "${positions}"; read every switch of the row`,
    );
  if (code.kind === "weights") return known(addressesWhere(code, (number) => positionAt(positions, number)));
  const matching = code.rows.filter((row) =>
    code.switches.every((number, i) => {
      const position = positionAt(positions, number);
      return position === undefined || String(position) === row.positions[i];
    }),
  );
  if (matching.length === 0)
    return refused(
      "positions-not-in-table",
      `no row of the table has the positions ${positions}; read them again or complete the table`,
    );
  return known(matching.map((row) => row.address).sort((a, b) => a - b));
}

/**
 * Which address do these positions give? Known only where one address is left; missing names the switches that were not read and would settle it
 * (`positions[3]` is switch 3). See `possibleAddresses` for the list and the refusals.
 */
export function decodeAddress(code: AddressCode, positions: string): Outcome<number> {
  const possible = possibleAddresses(code, positions);
  if (possible.kind !== "known") return possible;
  if (possible.value.length === 1) return known(possible.value[0]!);
  return missing(
    ...switchNumbers(code)
      .filter((number) => positionAt(positions, number) === undefined)
      .sort((a, b) => a - b)
      .map((number) => `positions[${number}]`),
  );
}
