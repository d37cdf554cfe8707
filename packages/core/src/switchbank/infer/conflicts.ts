import { type Evidence, familiesOf } from "./families.js";
import type { Conflict, InferOptions } from "./inference.js";

const MAX_CONFLICTS = 12;

/** Leaves out one after another what is not needed for the contradiction; what stays is a smallest set. */
function shrink(evidence: readonly Evidence[], within: readonly number[], options: InferOptions): number[] {
  let kept = [...within];
  for (const i of within) {
    const without = kept.filter((each) => each !== i);
    if (!fits(evidence, without, options)) kept = without;
  }
  return kept;
}

const fits = (evidence: readonly Evidence[], at: readonly number[], options: InferOptions): boolean =>
  familiesOf(
    options,
    at.map((i) => evidence[i]!),
    true,
  ).length > 0;

/**
 * Which samples contradict each other? Smallest sets (each found by deletion; further ones by leaving out one sample of a known set in turn),
 * smallest first, at most twelve. Empty where some rule fits everything.
 */
export function conflictsOf(evidence: readonly Evidence[], options: InferOptions): Conflict[] {
  const all = evidence.map((_, i) => i);
  const found: number[][] = [];
  const seen = new Set<string>();
  const queue: number[][] = [[]];
  while (queue.length > 0 && found.length < MAX_CONFLICTS) {
    const left = queue.shift()!;
    const within = all.filter((i) => !left.includes(i));
    const known = found.find((set) => set.every((i) => within.includes(i)));
    if (!known && fits(evidence, within, options)) continue;
    const set = known ?? shrink(evidence, within, options);
    if (!known) found.push(set);
    for (const i of set) {
      const next = [...left, i].sort((a, b) => a - b);
      const key = next.join(" ");
      if (next.length > 4 || seen.has(key)) continue;
      seen.add(key);
      queue.push(next);
    }
  }
  return found
    .sort((a, b) => a.length - b.length || a[0]! - b[0]!)
    .map((set) => ({ names: set.map((i) => evidence[i]!.name), at: set }));
}

/** Samples whose leaving out, alone, lets a rule fit all the others. */
export const suspectsOf = (evidence: readonly Evidence[], options: InferOptions): string[] =>
  evidence
    .filter((_, i) =>
      fits(
        evidence,
        evidence.map((_, j) => j).filter((j) => j !== i),
        options,
      ),
    )
    .map((each) => each.name);
