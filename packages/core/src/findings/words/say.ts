import { type Dimension, showQuantity, type UnitChoice } from "../../quantity/index.js";
import type { Finding } from "../finding.js";

/** What a code says of one finding: the heading, what is wanted, what was got, and what to do when it fails. Sentences are made from it once, for all. */
export interface Spoken {
  readonly title: string;
  readonly wanted: string;
  readonly got: string;
  readonly remedy: string;
  /** What to do while it is open; the readings that settle it where absent. */
  readonly whileOpen?: string;
  /** The heading says itself that something is not known. */
  readonly isQuestion?: boolean;
}

export type Speaker = (say: Say) => Spoken;

/** A finding's parameters as a reader sees them. */
export interface Say {
  readonly finding: Finding;
  /** A parameter as text; empty where the rule gave none. */
  text(name: string): string;
  /** A parameter as a quantity in the reader's units. */
  quantity(name: string, dimension: Dimension): string;
  /** `at most 15 A`, with the limit's own span and "(from memory)" where they apply. */
  limit(dimension: Dimension): string;
  /** What was got, with the span it may lie in where that is wider than a point. */
  got(dimension: Dimension): string;
}

const restsOnMemory = (finding: Finding): boolean =>
  finding.source.how === "memory" || (finding.alsoRestsOn ?? []).some((source) => source.how === "memory");

/** Puts a finding into the reader's units. */
export function sayOf(finding: Finding, units: UnitChoice): Say {
  const number = (name: string): number | undefined => {
    const value = finding.parameters[name];
    return typeof value === "number" ? value : undefined;
  };
  const show = (value: number | undefined, dimension: Dimension): string =>
    value === undefined ? "an unknown figure" : showQuantity(value, dimension, units);
  const between = (lo: number | undefined, hi: number | undefined, dimension: Dimension): string | undefined => {
    if (lo === undefined || hi === undefined || lo === hi) return undefined;
    const [from, to] = [show(lo, dimension), show(hi, dimension)];
    return from === to ? undefined : `${from} to ${to}`;
  };
  return {
    finding,
    text: (name) => String(finding.parameters[name] ?? ""),
    quantity: (name, dimension) => show(number(name), dimension),
    limit(dimension) {
      const sense = finding.limit?.sense === "at-least" ? "at least" : "at most";
      const span = between(number("limitLo"), number("limitHi"), dimension);
      const width = span === undefined ? "" : ` (it may be ${span})`;
      return `${sense} ${show(number("limit"), dimension)}${width}${restsOnMemory(finding) ? " (from memory)" : ""}`;
    },
    got(dimension) {
      const span = between(number("gotLo"), number("gotHi"), dimension);
      return `${show(number("got"), dimension)}${span === undefined ? "" : ` (it may be ${span})`}`;
    },
  };
}
