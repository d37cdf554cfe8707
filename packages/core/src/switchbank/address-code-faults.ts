import type { AddressCode } from "../record/index.js";
import { type BankFault, bankFault } from "./bank-fault.js";

/** A bank has 16 switches at most, so no weight is above the sixteenth power-of-two step. */
export const MAX_WEIGHT = 2 ** 15;

const isPowerOfTwo = (weight: number): boolean =>
  Number.isInteger(weight) && weight >= 1 && weight <= MAX_WEIGHT && (weight & (weight - 1)) === 0;

/** Is this address code one that can be followed? Every fault, by path from the code's own place (`path`). */
export function addressCodeFaults(code: AddressCode, path = "address"): BankFault[] {
  return code.kind === "weights" ? weightFaults(code, path) : tableFaults(code, path);
}

function switchesTwice(numbers: readonly number[], pathAt: (i: number) => string): BankFault[] {
  return numbers.flatMap((number, i) => {
    const first = numbers.indexOf(number);
    if (first === i) return [];
    return [
      bankFault(
        pathAt(i),
        "switch-twice",
        `wants each switch once, got switch ${number} again (first at ${pathAt(first)}); keep the one the sheet shows`,
      ),
    ];
  });
}

function weightFaults(code: Extract<AddressCode, { kind: "weights" }>, path: string): BankFault[] {
  const faults: BankFault[] = [];
  if (code.switches.length === 0)
    faults.push(
      bankFault(`${path}.switches`, "no-switches", "wants at least one switch that counts, got none; list them"),
    );
  faults.push(
    ...switchesTwice(
      code.switches.map((each) => each.switch),
      (i) => `${path}.switches[${i}].switch`,
    ),
  );
  code.switches.forEach((each, i) => {
    const at = `${path}.switches[${i}].weight`;
    if (!isPowerOfTwo(each.weight)) {
      faults.push(
        bankFault(
          at,
          "weight-not-power-of-two",
          `wants 1, 2, 4, 8 and so on up to ${MAX_WEIGHT}, got ${each.weight}; write such a code as a table of addresses`,
        ),
      );
      return;
    }
    const first = code.switches.findIndex((other) => other.weight === each.weight);
    if (first !== i)
      faults.push(
        bankFault(
          at,
          "weight-twice",
          `wants each weight once, got ${each.weight} again (first at ${path}.switches[${first}].weight); read the sheet again`,
        ),
      );
  });
  return faults;
}

function tableFaults(code: Extract<AddressCode, { kind: "table" }>, path: string): BankFault[] {
  const faults: BankFault[] = [];
  if (code.switches.length === 0)
    faults.push(
      bankFault(`${path}.switches`, "no-switches", "wants at least one switch that counts, got none; list them"),
    );
  faults.push(...switchesTwice(code.switches, (i) => `${path}.switches[${i}]`));
  const addressAt = new Map<number, number>();
  const positionsAt = new Map<string, number>();
  code.rows.forEach((row, i) => {
    const at = `${path}.rows[${i}]`;
    if (row.positions.length !== code.switches.length)
      faults.push(
        bankFault(
          `${at}.positions`,
          "row-length",
          `wants ${code.switches.length} signs, one a switch, got ${row.positions.length}; complete the row`,
        ),
      );
    if (row.positions.includes("?"))
      faults.push(
        bankFault(
          `${at}.positions`,
          "row-unread",
          `wants 1 or 0 for every switch, got "${row.positions}"; read the sheet or leave the row out`,
        ),
      );
    const sameAddress = addressAt.get(row.address);
    if (sameAddress === undefined) addressAt.set(row.address, i);
    else
      faults.push(
        bankFault(
          `${at}.address`,
          "address-twice",
          `wants each address once, got ${row.address} again (first at ${path}.rows[${sameAddress}]); keep the right row`,
        ),
      );
    const samePositions = positionsAt.get(row.positions);
    if (samePositions === undefined) positionsAt.set(row.positions, i);
    else
      faults.push(
        bankFault(
          `${at}.positions`,
          "positions-twice",
          `wants other positions for every address, got ${row.positions} again (first at ${path}.rows[${samePositions}]); read the sheet again`,
        ),
      );
  });
  return faults;
}
