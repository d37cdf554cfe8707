import type { CoachRecord, Policy } from "./schema/types.js";

/** The policy with every default filled in. The defaults and why are below, one line each. */
export type FullPolicy = Required<Pick<Policy, keyof typeof DEFAULT_POLICY>> & Policy;

export const DEFAULT_POLICY = {
  /** Device not above the conductor's ampacity, NEC 240.4(D) for small conductors (seen). */
  conductorRule: "nec",
  /** What a bare gauge number means. SAE wire holds 3 to 11 % less copper; a coach's loom is often SAE, but the label rarely says so. */
  areaBasis: "awg",
  /** NEC Table 310.15(C)(1) (seen). */
  bundling: "nec",
  /** NEC 552.10(E)(1): device not above ampacity (seen). */
  overcurrentCeilingRatio: 1,
  /** NEC 210.20(A) (seen). */
  continuousFactor: 1.25,
  /** ABYC E-11 11.14.2.6 as quoted (seen). */
  maxDropRatioCritical: 0.03,
  maxDropRatioGeneral: 0.1,
  maxDropRatioFeeder: 0.03,
  /** The base of the published ampacity tables. */
  ambientC: 30,
  /** Common practice, no source: a closed bay in summer and an engine space. 50 C is the engine-space figure of 33 CFR 183.425 note 1. */
  zoneAmbientC: { cabin: 30, bay: 40, engine: 50, outside: 40 } as Record<string, number>,
  labourRatePerHour: 0,
  /** Minutes of work: common practice, no source; a coach's own figures belong here. */
  bankSettingMin: 10,
  fuseChangeMin: 2,
  moveWithinMin: 15,
  moveBetweenMin: 45,
  steadyFeedMin: 60,
  rewireBaseMin: 30,
  rewireMinPerM: 5,
  taxRatio: 0,
  currency: "USD",
  unitsShown: "us",
  paper: "letter",
} as const satisfies Policy;

/** The record's policy over the defaults. */
export const policyOf = (record: CoachRecord): FullPolicy => ({
  ...DEFAULT_POLICY,
  ...record.policy,
  zoneAmbientC: { ...DEFAULT_POLICY.zoneAmbientC, ...record.policy?.zoneAmbientC },
});
