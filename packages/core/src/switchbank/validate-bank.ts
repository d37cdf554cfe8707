import type { Bank } from "../record/index.js";
import { addressCodeFaults } from "./address-code-faults.js";
import { type BankFault, bankFault } from "./bank-fault.js";

interface Use {
  readonly path: string;
  readonly number: number;
  readonly by: "address" | "option" | "unused";
}

/**
 * Is this bank written down so that it can be followed? Every fault, by path from the bank. `dimBlocks`: ids of the kind's blocks; where
 * absent the blocks that options name are not checked.
 */
export function validateBank(bank: Bank, dimBlocks?: readonly string[]): BankFault[] {
  const faults: BankFault[] = bank.address ? addressCodeFaults(bank.address) : [];
  const uses = usesOf(bank);
  for (const use of uses)
    if (use.number > bank.switches)
      faults.push(
        bankFault(
          use.path,
          "switch-outside-bank",
          `wants a switch from 1 to ${bank.switches}, got ${use.number}; count the switches again`,
        ),
      );
  for (const use of uses) {
    const other = uses.find((each) => each.number === use.number && each.by !== use.by);
    if (other && uses.indexOf(other) < uses.indexOf(use))
      faults.push(
        bankFault(
          use.path,
          "switch-claimed-twice",
          `wants a switch with one duty, got switch ${use.number}, which ${other.path} uses too; keep one`,
        ),
      );
  }
  const settings = new Map<string, number>();
  (bank.options ?? []).forEach((setting, i) => {
    const numbers = setting.set.map((each) => each.switch);
    numbers.forEach((number, j) => {
      if (numbers.indexOf(number) !== j)
        faults.push(
          bankFault(
            `options[${i}].set[${j}].switch`,
            "switch-twice",
            `wants each switch once in a setting, got switch ${number} again; keep one`,
          ),
        );
    });
    const key = setting.set
      .map((each) => `${each.switch}=${each.position}`)
      .sort()
      .join(" ");
    const same = settings.get(key);
    if (same === undefined) settings.set(key, i);
    else
      faults.push(
        bankFault(
          `options[${i}].set`,
          "setting-twice",
          `wants a setting of its own, got the positions of options[${same}] again; read the sheet again`,
        ),
      );
    setting.enables.forEach((block, j) => {
      if (dimBlocks && !dimBlocks.includes(block))
        faults.push(
          bankFault(
            `options[${i}].enables[${j}]`,
            "block-unknown",
            `wants a dim block of this kind, got ${block}; name it among the kind's dim blocks or correct it`,
          ),
        );
    });
  });
  const unused = (bank.unused ?? []).map((each) => each.switch);
  unused.forEach((number, i) => {
    if (unused.indexOf(number) !== i)
      faults.push(
        bankFault(
          `unused[${i}].switch`,
          "switch-twice",
          `wants each switch once, got switch ${number} again; keep one`,
        ),
      );
  });
  if (bank.printed && bank.printed.length !== bank.switches)
    faults.push(
      bankFault(
        "printed",
        "printed-count",
        `wants ${bank.switches} entries, one a switch, got ${bank.printed.length}; write an empty one where nothing is printed`,
      ),
    );
  return faults;
}

function usesOf(bank: Bank): Use[] {
  const uses: Use[] = [];
  if (bank.address?.kind === "weights")
    bank.address.switches.forEach((each, i) => {
      uses.push({ path: `address.switches[${i}].switch`, number: each.switch, by: "address" });
    });
  if (bank.address?.kind === "table")
    bank.address.switches.forEach((number, i) => {
      uses.push({ path: `address.switches[${i}]`, number, by: "address" });
    });
  (bank.options ?? []).forEach((setting, i) => {
    setting.set.forEach((each, j) => {
      uses.push({ path: `options[${i}].set[${j}].switch`, number: each.switch, by: "option" });
    });
  });
  (bank.unused ?? []).forEach((each, i) => {
    uses.push({ path: `unused[${i}].switch`, number: each.switch, by: "unused" });
  });
  return uses;
}
