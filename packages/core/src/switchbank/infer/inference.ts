import type { AddressCode } from "../../record/index.js";

export type WeightsCode = Extract<AddressCode, { kind: "weights" }>;
export type Coding = WeightsCode["coding"];

/** A module of which both were seen: the address it answers to and how its switches stand (`?` where one was not read). */
export interface Sample {
  readonly address: number;
  /** In switch order over the whole row. */
  readonly positions: string;
  readonly name?: string | undefined;
}

/** A module in the coach of which the address or the positions (or some of them) are still to be seen. */
export interface Installed {
  readonly name: string;
  readonly address?: number | undefined;
  readonly positions?: string | undefined;
}

/** Which rules are thought possible. The fewer, the sooner they are settled; leave out only what is known not to be. */
export interface InferOptions {
  /** How many switches the row has, 1 to 16. */
  readonly switches: number;
  /** Addresses whose coded value may be 0; 0 and 1 where absent. */
  readonly firstAddresses?: readonly number[] | undefined;
  /** Binary and Gray where absent. */
  readonly codings?: readonly Coding[] | undefined;
  /** How many switches may count for the address; any number where absent. */
  readonly counting?: readonly number[] | undefined;
  /** Switches known to be for something else. */
  readonly notCounted?: readonly number[] | undefined;
  /** An address known to exist in this code: rules that cannot give it are out. */
  readonly maxAddress?: number | undefined;
  readonly installed?: readonly Installed[] | undefined;
  /** How many rules to write out at most; 24 where absent. */
  readonly listAtMost?: number | undefined;
}

/** All consistent rules of one coding, first address and number of switches, told by what each weight may sit on. */
export interface RuleFamily {
  readonly coding: Coding;
  readonly firstAddress: number;
  /** How many switches count. */
  readonly counting: number;
  /** Number of rules; exact up to 2^53, `rulesText` is exact always. */
  readonly rules: number;
  readonly rulesText: string;
  /** For each weight: every switch and polarity that some consistent rule puts it on. */
  readonly weights: readonly {
    readonly weight: number;
    readonly may: readonly { readonly switch: number; readonly onMeans: 0 | 1 }[];
  }[];
}

/** How the row must stand for an address, as far as the consistent rules agree. */
export interface Prediction {
  readonly address: number;
  /** `1` or `0` where all rules that count the switch agree; `?` where they differ or none counts it. */
  readonly positions: string;
  /** Switches on which the rules differ. */
  readonly open: readonly number[];
  /** Rules, all or some, that can give this address at all. */
  readonly reachedBy: "all" | "some";
  /** One row is right under every consistent rule (switches that no rule counts are left to options). */
  readonly isSettled: boolean;
}

/** What to look at next. */
export interface NextLook {
  readonly name: string;
  /** Read its switches, or find the address it answers to. */
  readonly look: "positions" | "address";
  /** Rules that will be left on the average, every consistent rule held equally likely and switches that do not count either way. */
  readonly expectedRules: number;
  /** False: estimated from rules drawn evenly from all. */
  readonly isExact: boolean;
}

/** A smallest set of samples that no rule of the options fits at once: leave any one out and a rule fits the rest. */
export interface Conflict {
  readonly names: readonly string[];
  /** Places in the list of samples, installed modules with an address following after them. */
  readonly at: readonly number[];
}

export interface Inference {
  /** Number of consistent rules: 0 in a contradiction, 1 when the code is settled. Exact up to 2^53; `rulesText` is exact always. */
  readonly rules: number;
  readonly rulesText: string;
  readonly families: readonly RuleFamily[];
  /** Rules written out, plainest first: switches in order, ON counting, binary. */
  readonly listed: readonly WeightsCode[];
  readonly isListComplete: boolean;
  /** The plainest of those listed. A guess while `rules` is above 1, never to be shown as known. */
  readonly simplest: WeightsCode | undefined;
  readonly predictions: readonly Prediction[];
  readonly lookNext: readonly NextLook[];
  /** Smallest sets of samples that cannot all be true; empty where a rule fits them all. */
  readonly conflicts: readonly Conflict[];
  /** Samples whose leaving out, alone, makes a rule fit all the others: read these again first. */
  readonly suspects: readonly string[];
}
