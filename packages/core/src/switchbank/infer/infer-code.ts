import { known, type Outcome, refused } from "../../quantity/index.js";
import { conflictsOf, suspectsOf } from "./conflicts.js";
import { type Evidence, familiesOf, shapesOf } from "./families.js";
import type { Family } from "./family.js";
import type { Inference, InferOptions, RuleFamily, Sample } from "./inference.js";
import { lookNext } from "./look-next.js";
import { plainestFirst } from "./plainness.js";
import { predictionsOf } from "./predictions.js";

const MAX_SWITCHES = 16;

/**
 * Which rules from address to positions fit the modules that were seen? All rules over: which switches count, which weight (1, 2, 4 … without a
 * gap) sits on which, whether ON or OFF counts, the first address, binary or Gray. They are counted exactly and told by family; the positions
 * they predict, where they agree, and the module to look at next come with them. Samples that no rule fits are named.
 * An installed module with an address is evidence too: the code can give that address.
 * Refused: `switches-out-of-range`, `positions-unreadable` (a row of another length, or signs other than 1, 0 and ?), `address-unreadable`,
 * `no-rule-possible` (the options leave no rule even without samples).
 */
export function inferCode(samples: readonly Sample[], options: InferOptions): Outcome<Inference> {
  const fault = faultOf(samples, options);
  if (fault) return fault;
  if (shapesOf(options).length === 0)
    return refused(
      "no-rule-possible",
      `${options.switches} switches with these options give no address code (highest address ${options.maxAddress ?? "not stated"}); allow more`,
    );
  const installed = options.installed ?? [];
  const evidence: Evidence[] = [
    ...samples.map((each) => ({
      name: each.name ?? `address ${each.address}, ${each.positions}`,
      address: each.address,
      positions: each.positions,
    })),
    ...installed.flatMap((each) =>
      each.address === undefined ? [] : [{ name: each.name, address: each.address, positions: each.positions }],
    ),
  ];
  const families = familiesOf(options, evidence);
  const rules = families.reduce((sum, family) => sum + family.rules, 0n);
  const atMost = Math.max(1, options.listAtMost ?? 24);
  const listed = plainestFirst(families.flatMap((family) => firstRules(family, atMost))).slice(0, atMost);
  const isContradiction = rules === 0n;
  return known({
    rules: Number(rules),
    rulesText: rules.toString(),
    families: families.map(told),
    listed,
    isListComplete: BigInt(listed.length) === rules,
    simplest: listed[0],
    predictions: predictionsOf(families, options),
    lookNext: lookNext(
      families,
      installed,
      evidence.every(
        (each) => each.positions === undefined || !/[01]/.test(each.positions) || !each.positions.includes("?"),
      ),
    ),
    conflicts: isContradiction ? conflictsOf(evidence, options) : [],
    suspects: isContradiction ? suspectsOf(evidence, options) : [],
  });
}

const firstRules = (family: Family, atMost: number) =>
  Array.from({ length: family.rules < BigInt(atMost) ? Number(family.rules) : atMost }, (_, i) =>
    family.ruleAt(BigInt(i)),
  );

const told = (family: Family): RuleFamily => ({
  ...family.shape,
  rules: Number(family.rules),
  rulesText: family.rules.toString(),
  weights: family.seats().map((may, bit) => ({ weight: 2 ** bit, may })),
});

function faultOf(samples: readonly Sample[], options: InferOptions): Outcome<never> | undefined {
  const { switches } = options;
  if (!Number.isInteger(switches) || switches < 1 || switches > MAX_SWITCHES)
    return refused("switches-out-of-range", `a bank has 1 to ${MAX_SWITCHES} switches, got ${switches}`);
  for (const each of [...samples, ...(options.installed ?? [])]) {
    const name = each.name ?? `address ${each.address}`;
    if (each.positions !== undefined && (each.positions.length !== switches || /[^01?]/.test(each.positions)))
      return refused(
        "positions-unreadable",
        `${name}: wants ${switches} signs, 1 (ON), 0 (OFF) or ? (not read), got "${each.positions}"`,
      );
    if (each.address !== undefined && !(Number.isInteger(each.address) && each.address >= 0))
      return refused("address-unreadable", `${name}: an address is a whole number from 0 up, got ${each.address}`);
  }
  return undefined;
}
