import type { Source, Span } from "../quantity/index.js";
import { COMMON_PRACTICE } from "../quantity/index.js";
import type { Supply } from "../record/index.js";
import { sourceOf } from "../tables/index.js";

/** What stands in for a battery figure that the record lacks. Every one used is listed as assumed, with its mark. */
export interface BatteryClassFigure {
  readonly value: number;
  readonly span: Span;
  readonly source: Source;
  readonly why: string;
}

const MEMORY: Source = { id: "class-figure", name: "class figure from memory, no source", how: "memory" };
const figure = (value: number, lo: number, hi: number, source: Source, why: string): BatteryClassFigure => ({
  value,
  span: { lo, hi },
  source,
  why,
});

/** Lead-acid of any sort, and lithium iron phosphate. Chemistry not on record is taken as lead, the one that lasts less. */
export type Family = "lead" | "lithium";
export const familyOf = (supply: Pick<Supply, "chemistry">): Family =>
  supply.chemistry === "lifepo4" ? "lithium" : "lead";

export const CLASS_BATTERY = {
  exponent: {
    lead: figure(1.2, 1.1, 1.3, sourceOf("peukert", "typical k lead-acid"), "1.1 to 1.3; one page says 1.2 to 2"),
    lithium: figure(
      1.02,
      1,
      1.05,
      MEMORY,
      "no exponent is published for lithium iron phosphate; it gives almost the same at any current",
    ),
  },
  ratedHours: {
    lead: figure(20, 20, 20, COMMON_PRACTICE, "house batteries are marked at 20 hours unless the label says otherwise"),
    lithium: figure(20, 20, 20, COMMON_PRACTICE, "with an exponent near 1 the hours hardly matter"),
  },
  /** Share of the capacity lost for every kelvin below 25 C. */
  coldPerK: {
    lead: figure(0.01, 0.006, 0.014, MEMORY, "about a quarter less at freezing point, a third at worst"),
    lithium: figure(0.005, 0.002, 0.01, MEMORY, "about an eighth less at freezing point"),
  },
  /** Share of the capacity lost in a month at rest. */
  selfPerMonth: {
    lead: figure(0.04, 0.01, 0.1, MEMORY, "sealed ones lose 1 to 3 % in a month, old flooded ones up to 10 %"),
    lithium: figure(0.03, 0.01, 0.05, MEMORY, "cells and their own watch circuit together"),
  },
  /** Share of the charge put in that can be taken out again. */
  chargeBack: {
    lead: figure(0.85, 0.75, 0.95, MEMORY, "the last part of a charge makes gas"),
    lithium: figure(0.99, 0.97, 1, MEMORY, "almost nothing is lost"),
  },
  reserve: {
    lead: figure(0.5, 0.5, 0.5, COMMON_PRACTICE, "lead is not drawn below half without shortening its life"),
    lithium: figure(0.2, 0.2, 0.2, COMMON_PRACTICE, "a fifth is kept back from the cut-off"),
  },
} as const satisfies Record<string, Record<Family, BatteryClassFigure>>;

/** What the two-wire network, its controller and buttons draw, and what a load draws that is off but has its feed. From memory. */
export const CLASS_STANDING = {
  networkA: figure(0.05, 0, 0.2, MEMORY, "controller and buttons awake on the two-wire network"),
  standbyA: figure(0.02, 0, 0.1, MEMORY, "clock, memory or remote receiver of a load that is off"),
} as const;

/** The temperature at which capacities are marked, C. From memory: 25 C, 77 F. */
export const MARKED_AT_C = 25;

/** The temperature of a bank whose record does not say: common practice, no source; a night in spring, 15 K either way as any assumed temperature. */
export const UNKNOWN_BATTERY_C = 20;

/** The state of charge of a bank that nobody looked at: as the network takes it. */
export const UNKNOWN_CHARGE = { value: 0.75, span: { lo: 0.25, hi: 1 } } as const;

/** Above this charge a battery takes less and less, down to nothing when full. Common practice, no source. */
export const TAPER_FROM_RATIO = 0.8;

export const HOURS_PER_MONTH = 730;
