import { known, missing, type Outcome, refused } from "../quantity/index.js";
import type { Bank, DimBlockId } from "../record/index.js";
import { positionAt } from "./decode-address.js";

/**
 * Which dim blocks do these positions enable? `positions` in switch order over the whole row.
 * Missing: the sheet's option settings (`bank.options`), or the switches that were not read and would settle it (`positions[5]`).
 * Refused: `option-not-listed`: no listed setting looks like this.
 */
export function readOption(bank: Bank, positions: string): Outcome<readonly DimBlockId[]> {
  if (!bank.options || bank.options.length === 0) return missing("bank.options");
  const possible = bank.options.filter((setting) =>
    setting.set.every((each) => {
      const position = positionAt(positions, each.switch);
      return position === undefined || position === each.position;
    }),
  );
  const first = possible[0];
  if (!first)
    return refused(
      "option-not-listed",
      `no listed setting has the positions ${positions}; read them again or complete the list`,
    );
  const key = (enables: readonly string[]): string => [...new Set(enables)].sort().join(" ");
  if (possible.every((setting) => key(setting.enables) === key(first.enables))) return known([...first.enables]);
  const unread = new Set<number>();
  for (const setting of possible)
    for (const each of setting.set) if (positionAt(positions, each.switch) === undefined) unread.add(each.switch);
  if (unread.size === 0)
    return refused(
      "option-ambiguous",
      `two listed settings fit the positions ${positions} and enable different blocks; complete the list`,
    );
  return missing(...[...unread].sort((a, b) => a - b).map((number) => `positions[${number}]`));
}
