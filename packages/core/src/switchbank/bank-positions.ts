import { known, missing, type Outcome, refused } from "../quantity/index.js";
import type { Bank, OptionSetting } from "../record/index.js";
import { encodeAddress, type SwitchPosition } from "./encode-address.js";

/** What a module's bank is to say: its address and the dim blocks that are enabled. */
export interface BankWish {
  readonly address: number | undefined;
  /** Ids of the dim blocks to enable; an empty list means none. */
  readonly enables: readonly string[];
}

/** Which rule of the bank asks for a switch. */
export type ClaimedBy = "address" | "option" | "unused";

export interface SwitchClaim extends SwitchPosition {
  readonly by: ClaimedBy;
}

/** What can be said of a row of switches so far: the positions (`?` where nothing claims the switch) and what is lacking. */
export interface BankReading {
  readonly positions: string;
  readonly claims: readonly SwitchClaim[];
  /** Paths of what is lacking: `address` is the module's, the rest is the kind's (`bank.…`). */
  readonly needs: readonly string[];
}

const sameBlocks = (a: readonly string[], b: readonly string[]): boolean => {
  const set = new Set(a);
  return set.size === new Set(b).size && b.every((block) => set.has(block));
};

/** The first listed setting that enables exactly these blocks. */
export const settingFor = (bank: Bank, enables: readonly string[]): OptionSetting | undefined =>
  bank.options?.find((setting) => sameBlocks(setting.enables, enables));

/**
 * How much of the row can be set, and what is lacking for the rest? For a card that shows what is known already.
 * Refused: no setting gives it (`address-out-of-range`, `option-not-listed`), a faulty code, `switch-outside-bank`, or `switches-in-conflict`:
 * two rules want the same switch differently.
 */
export function readBank(bank: Bank | undefined, wish: BankWish): Outcome<BankReading> {
  if (!bank) return known({ positions: "", claims: [], needs: ["bank"] });
  const claims: SwitchClaim[] = [];
  const needs: string[] = [];
  if (!bank.address) needs.push("bank.address");
  else if (wish.address === undefined) needs.push("address");
  else {
    const address = encodeAddress(bank.address, wish.address);
    if (address.kind === "refused") return address;
    if (address.kind === "missing") needs.push(...address.needs);
    else for (const each of address.value) claims.push({ ...each, by: "address" });
  }
  const setting = settingFor(bank, wish.enables);
  if (setting) for (const each of setting.set) claims.push({ ...each, by: "option" });
  else if (bank.options && bank.options.length > 0)
    return refused(
      "option-not-listed",
      `the sheet lists no setting that enables ${wish.enables.length > 0 ? wish.enables.join(", ") : "no block"}; pick a listed one or complete the list`,
    );
  else if (wish.enables.length > 0) needs.push("bank.options");
  for (const each of bank.unused ?? []) claims.push({ switch: each.switch, position: each.position, by: "unused" });

  const signs: string[] = Array.from({ length: bank.switches }, () => "?");
  const first = new Map<number, SwitchClaim>();
  for (const claim of claims) {
    if (claim.switch > bank.switches)
      return refused(
        "switch-outside-bank",
        `the bank has ${bank.switches} switches, but ${claim.by} names switch ${claim.switch}; correct the bank`,
      );
    const other = first.get(claim.switch);
    if (other && other.position !== claim.position)
      return refused(
        "switches-in-conflict",
        `switch ${claim.switch}: ${other.by} wants ${onOff(other)}, ${claim.by} wants ${onOff(claim)}; correct the bank`,
      );
    if (!other) first.set(claim.switch, claim);
    signs[claim.switch - 1] = String(claim.position);
  }
  const isAddressKnown = bank.address !== undefined && !needs.includes("address");
  signs.forEach((sign, i) => {
    if (sign !== "?") return;
    // A switch that only waits for the address or the option is named by that, not twice.
    if (isAddressSwitch(bank, i + 1) && !isAddressKnown) return;
    if (isAddressSwitch(bank, i + 1) && needs.some((need) => need.startsWith("bank.address"))) return;
    needs.push(
      bank.options?.some((each) => each.set.some((one) => one.switch === i + 1))
        ? `bank.options[${setting ? bank.options.indexOf(setting) : 0}].set[switch=${i + 1}]`
        : `bank.unused[switch=${i + 1}]`,
    );
  });
  return known({ positions: signs.join(""), claims, needs });
}

const onOff = (each: SwitchPosition): string => (each.position === 1 ? "ON" : "OFF");

const isAddressSwitch = (bank: Bank, number: number): boolean =>
  bank.address === undefined
    ? false
    : bank.address.kind === "table"
      ? bank.address.switches.includes(number)
      : bank.address.switches.some((each) => each.switch === number);

/**
 * How must every switch of the row stand, first to last (`1` ON, `0` OFF), so that the module answers to `address` and dims exactly the blocks in
 * `enables`? Missing names what the sheet or the record lacks (`address` is the module's own field, `bank.…` the kind's); a row with one
 * switch unclaimed is missing, never guessed. Refusals: see `readBank`.
 */
export function bankPositions(bank: Bank | undefined, wish: BankWish): Outcome<string> {
  const reading = readBank(bank, wish);
  if (reading.kind !== "known") return reading;
  return reading.value.needs.length > 0 ? missing(...reading.value.needs) : known(reading.value.positions);
}
