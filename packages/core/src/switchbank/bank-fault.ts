/** One thing wrong with a bank as it was written down, by path inside the bank. */
export interface BankFault {
  /** Path from the bank: `address.switches[2].weight`. */
  readonly path: string;
  readonly code:
    | "no-switches"
    | "switch-outside-bank"
    | "switch-twice"
    | "switch-claimed-twice"
    | "weight-not-power-of-two"
    | "weight-twice"
    | "row-length"
    | "row-unread"
    | "address-twice"
    | "positions-twice"
    | "setting-twice"
    | "block-unknown"
    | "printed-count";
  /** Where, what is wanted, what was got, what to do next. */
  readonly message: string;
}

export const bankFault = (path: string, code: BankFault["code"], text: string): BankFault => ({
  path,
  code,
  message: `${path}: ${text} [${code}]`,
});
