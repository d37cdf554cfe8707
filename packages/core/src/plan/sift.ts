import type { Finding } from "../findings/index.js";
import type { CoachIndex, CoachRecord, ModuleId } from "../record/index.js";
import { applyPlan } from "./apply.js";
import type { Chosen } from "./explain.js";
import { type Option, optionKey, type Position } from "./option.js";
import type { Cut, Plan } from "./plan.js";

/** Checks a record; the plan asks it of the record as it is and as each plan would leave it. */
export type RecordCheck = (record: CoachRecord) => readonly Finding[];

/** The options still open to each position in one part of the search. */
export type Region = readonly { readonly position: Position; readonly options: readonly Option[] }[];

const grave = (finding: Finding): boolean => finding.severity === "stop" || finding.severity === "mend";
const keyOf = (finding: Finding): string => `${finding.code} ${finding.subject.id} ${finding.severity}`;

/** The grave findings of a record, each with its verdict: one that was open and now fails is new. */
const graveOf = (findings: readonly Finding[]): ReadonlyMap<string, Finding["verdict"]> => {
  const found = new Map<string, Finding["verdict"]>();
  for (const finding of findings.filter(grave))
    if (found.get(keyOf(finding)) !== "fails") found.set(keyOf(finding), finding.verdict);
  return found;
};

const changesNothing = (plan: Plan): boolean => plan.modulesTouched === 0 && plan.wiresMoved === 0;

/** What the check needs to know, and what it has found so far. */
export interface Sieve {
  readonly cuts: Cut[];
  readonly cutOptions: Set<string>;
  newFindings(plan: Plan): readonly Finding[];
  /** Checked and without a new finding. */
  isCleared(plan: Plan): boolean;
  hasFailed(plan: Plan): boolean;
  asksLeft(): number;
}

/** Remembers each plan it has checked. `mostChecks` bounds the work. */
export function sieveOf(index: CoachIndex, check: RecordCheck, mostChecks: number): Sieve {
  let before: ReadonlyMap<string, Finding["verdict"]> | undefined;
  let asks = 0;
  const seen = new Map<string, readonly Finding[]>();
  return {
    cuts: [],
    cutOptions: new Set(),
    isCleared: (plan) => changesNothing(plan) || seen.get(plan.id)?.length === 0,
    hasFailed: (plan) => (seen.get(plan.id)?.length ?? 0) > 0,
    asksLeft: () => mostChecks - asks,
    newFindings(plan) {
      if (changesNothing(plan)) return [];
      const known = seen.get(plan.id);
      if (known !== undefined) return known;
      asks++;
      before ??= graveOf(check(index.record));
      const was = before;
      const found = check(applyPlan(index.record, plan)).filter((finding) => {
        const verdict = was.get(keyOf(finding));
        return grave(finding) && (verdict === undefined || (verdict === "open" && finding.verdict === "fails"));
      });
      seen.set(plan.id, found);
      return found;
    },
  };
}

const cutOf = (plan: string, modules: readonly ModuleId[], findings: readonly Finding[]): Cut => ({
  plan,
  modules,
  findings: findings.map((finding) => ({
    code: finding.code,
    subject: finding.subject.id,
    severity: finding.severity,
  })),
});

/**
 * Takes one failing plan out of the search and returns the regions to search instead. A choice that makes a new finding by itself is taken out of every
 * plan. Where only the choices together make it, exactly that combination is taken out: the region is split into parts that differ from it
 * in the first, second, third … choice, so that nothing else is lost.
 */
export function cutPlan(
  sieve: Sieve,
  regions: readonly Region[],
  at: number,
  failing: Chosen,
  alone: (option: Option) => Plan,
): Region[] {
  const touched = [...failing.options.values()].filter((option) => option.isTouched);
  let isCut = false;
  for (const option of touched) {
    const plan = alone(option);
    const findings = sieve.newFindings(plan);
    if (findings.length === 0) continue;
    isCut = true;
    if (sieve.cutOptions.has(optionKey(option))) continue;
    sieve.cutOptions.add(optionKey(option));
    sieve.cuts.push(cutOf(plan.id, [option.module.id], findings));
  }
  if (isCut)
    return regions.map((region) =>
      region.map(({ position, options }) => ({
        position,
        options: options.filter((option) => !sieve.cutOptions.has(optionKey(option))),
      })),
    );
  const plan = failing.plan as Plan;
  sieve.cuts.push(
    cutOf(
      plan.id,
      touched.map((option) => option.module.id),
      sieve.newFindings(plan),
    ),
  );
  const region = regions[at] ?? [];
  const parts = region.map((_, i) =>
    region.map(({ position, options }, j) => {
      const chosen = failing.options.get(position.module.id);
      const isChosen = (option: Option): boolean => chosen !== undefined && option.key === chosen.key;
      return {
        position,
        options: j < i ? options.filter(isChosen) : j === i ? options.filter((option) => !isChosen(option)) : options,
      };
    }),
  );
  return [
    ...regions.slice(0, at),
    ...parts.filter((part) => part.every((each) => each.options.length > 0)),
    ...regions.slice(at + 1),
  ];
}
