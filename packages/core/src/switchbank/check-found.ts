import type { Outcome } from "../quantity/index.js";
import type { Bank, DimBlockId } from "../record/index.js";
import { type BankWish, readBank } from "./bank-positions.js";
import { possibleAddresses } from "./decode-address.js";
import { readOption } from "./read-option.js";

/** What the positions as found say, against what they should be. */
export interface FoundCheck {
  /**
   * `agree`: every switch that a rule claims was read and stands right; `differ`: at least one stands wrong;
   * `cannot-tell`: some were not read or the rule is not known (`needs` says which).
   */
  readonly verdict: "agree" | "differ" | "cannot-tell";
  /** Switches that stand otherwise than wanted. */
  readonly wrong: readonly { readonly switch: number; readonly found: 0 | 1; readonly wanted: 0 | 1 }[];
  /** Addresses that the positions as found can mean. */
  readonly shows: Outcome<readonly number[]>;
  readonly enables: Outcome<readonly DimBlockId[]>;
  readonly needs: readonly string[];
}

/**
 * Do the positions as found fit the address the module answers to (and, where `enables` is given, the blocks that are meant to dim)?
 * Leave `enables` undefined to ask about the address alone.
 */
export function checkFound(
  bank: Bank,
  found: string,
  wish: { readonly address: number | undefined; readonly enables?: readonly string[] },
): FoundCheck {
  const shows: Outcome<readonly number[]> = bank.address
    ? possibleAddresses(bank.address, found)
    : { kind: "missing", needs: ["bank.address"] };
  const enables = readOption(bank, found);
  const asked: BankWish = { address: wish.address, enables: wish.enables ?? [] };
  const only: Bank = wish.enables ? bank : { switches: bank.switches, ...(bank.address && { address: bank.address }) };
  const reading = readBank(only, asked);
  if (reading.kind !== "known") {
    // An address that no setting gives, or one outside the table: the positions cannot be right.
    const isWrong = reading.kind === "refused" && reading.code === "address-out-of-range";
    return {
      verdict: isWrong ? "differ" : "cannot-tell",
      wrong: [],
      shows,
      enables,
      needs: reading.kind === "missing" ? reading.needs : [],
    };
  }
  const wrong: { switch: number; found: 0 | 1; wanted: 0 | 1 }[] = [];
  const needs = reading.value.needs.filter((need) => wish.enables || !need.startsWith("bank.unused"));
  for (const claim of reading.value.claims) {
    const sign = found[claim.switch - 1];
    if (sign !== "0" && sign !== "1") needs.push(`positions[${claim.switch}]`);
    else if (sign !== String(claim.position))
      wrong.push({ switch: claim.switch, found: sign === "1" ? 1 : 0, wanted: claim.position });
  }
  wrong.sort((a, b) => a.switch - b.switch);
  return {
    verdict: wrong.length > 0 ? "differ" : needs.length > 0 ? "cannot-tell" : "agree",
    wrong,
    shows,
    enables,
    needs,
  };
}
