import type { Source, Span } from "../quantity/index.js";

/** A figure of a class of parts, used where the record has none. Never hidden: every one used is listed as assumed. */
export interface ClassFigure {
  readonly value: number;
  readonly span: Span;
  readonly source: Source;
  readonly why: string;
}

const fromMemory = (value: number, lo: number, hi: number, why: string): ClassFigure => ({
  value,
  span: { lo, hi },
  source: { id: "class-figure", name: "class figure from memory, no source", how: "memory" },
  why,
});

/** Shares of the nominal volts (12 or 24), so that one table serves both. */
export const CLASS_FIGURES = {
  ledForwardRatio: fromMemory(0.75, 0.7, 0.8, "three white diodes of about 3 V on 12 V, six on 24 V"),
  kneeRatio: fromMemory(0.5, 0.4, 0.6, "a regulated load gives up at about half its volts"),
  dropOutRatio: fromMemory(0.75, 0.6, 0.8, "12 V electronics and drivers stop between 7 and 10 V"),
  stallOverRunning: fromMemory(5, 3, 10, "a stalled brush motor draws three to ten times its running current"),
  contactOhm: fromMemory(0.01, 0.002, 0.05, "relay contact or transistor, new to worn"),
  connectorOhm: fromMemory(0.004, 0.001, 0.015, "a clean crimped pin"),
  fuseOhm: fromMemory(0.0075, 0.0015, 0.025, "blade fuse of unknown rating, 5 to 30 A"),
  quiescentA: fromMemory(0.1, 0, 0.3, "a module's own electronics"),
  batteryOhmAh: fromMemory(0.5, 0.2, 1.5, "ohms times ampere-hours of a 12 V bank: 5 milliohm at 100 Ah"),
  batteryOhm: fromMemory(0.005, 0.001, 0.02, "a 12 V bank of unknown size"),
  outputDroopRatio: fromMemory(0.01, 0.005, 0.02, "a regulated output sags about 1 % at its rated current"),
} as const;

/** A figure that the record lacks and a class figure stood in for. */
export interface Assumed {
  /** The record field that would replace it. */
  readonly path: string;
  readonly value: number;
  readonly source: Source;
}
