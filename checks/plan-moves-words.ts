import type { Circuit, Load, ModuleKind } from "@fusebook/core/record";

/** Each rule has a bit, so that a plan that breaks exactly one of them is known too: that tells whether the rule matters on this coach. */
export const RULES = [
  "kind ruled out by the job",
  "kind not to be had",
  "kind does not take the position",
  "other pole switched",
  "switched rating",
  "dimmed rating",
  "module total",
  "fuse over channel, load or wire",
  "load that must not dim",
  "load that is unknown",
  "channel not on record",
  "locked module",
  "locked circuit or load",
  "circuit may not move",
  "program fixed",
  "detector not moved",
  "out of reach",
  "feeder limit",
  "bar limit",
  "budget",
  "limit on minutes",
  "dead module kept",
  "fixed or forbidden choice",
  "means ruled out by the job",
  "steady feed not allowed",
  "setting not read",
  "channel shared",
] as const;
export type Rule = (typeof RULES)[number];
export const bitOf = (rule: Rule): number => 1 << RULES.indexOf(rule);

/** Mistakes that a planner could make in scoring; each is planted to see that the check notices it. */
export const SLIPS = [
  "stock is paid for",
  "freed modules are paid for",
  "dead modules are freed",
  "access is paid for each module",
  "isolation opens nothing",
  "moves open no place where they end",
  "changed fuses take no time",
  "a neighbour costs no more than the own module",
  "steady feeds have no parts",
  "a rewire takes no time for its length",
  "what a load on a feed draws is forgotten",
  "spoiled loads count nothing",
  "part minutes are not begun minutes",
  "a steady feed is no moved wire",
  "the arriving fuse is not looked at",
] as const;
export type Slip = (typeof SLIPS)[number];

/** One thing done with one module. `enables` undefined: as found and not read. */
export interface Does {
  readonly kind: ModuleKind;
  readonly enables: readonly string[] | undefined;
  readonly isReplaced: boolean;
  readonly isTouched: boolean;
  readonly broken: number;
  readonly minutes: number;
}

export type Mode = "dims" | "switches" | "unread" | "none";

/** A circuit with all its loads, or with those that must not dim on feeds of their own. */
export interface Form {
  readonly circuit: Circuit;
  readonly kept: readonly Load[];
  readonly fed: readonly Load[];
  readonly broken: number;
  readonly minutes: number;
  readonly cents: number;
  readonly wires: number;
  readonly highA: number | undefined;
  readonly needA: number | undefined;
  readonly fedA: number;
}

/** How a form sits on a channel: what it breaks, takes and gives. */
export interface Seat {
  readonly broken: number;
  readonly minutes: number;
  readonly cents: number;
  readonly wires: number;
  readonly value: number;
  readonly changesFuse: boolean;
  readonly rewires: boolean;
}
