import { positionAt } from "../decode-address.js";
import { addressesWhere } from "../encode-address.js";
import {
  expectedAddressOver,
  expectedAfterAddress,
  expectedAfterPositions,
  expectedPositionsOver,
  rowOf,
} from "./expected-rules.js";
import { codedValue, type Family } from "./family.js";
import type { Installed, NextLook, WeightsCode } from "./inference.js";

/** Where samples have unread switches, so many rules are written out to judge a look by. */
const WRITTEN_OUT = 1200;
/** A row with more unread switches than this says too little to wait for. */
const MAX_UNREAD = 8;

interface Drawn {
  readonly family: Family;
  readonly rule: WeightsCode;
}

/** All rules, or `WRITTEN_OUT` of them at even distances. */
function drawEvenly(families: readonly Family[], rules: bigint): Drawn[] {
  const count = rules < BigInt(WRITTEN_OUT) ? Number(rules) : WRITTEN_OUT;
  const drawn: Drawn[] = [];
  let first = 0n;
  let next = 0;
  for (const family of families) {
    for (; next < count; next++) {
      const rank = (rules * BigInt(2 * next + 1)) / BigInt(2 * count) - first;
      if (rank >= family.rules) break;
      drawn.push({ family, rule: family.ruleAt(rank) });
    }
    first += family.rules;
  }
  return drawn;
}

/**
 * Which installed module settles the code soonest? Those whose address is known but whose row is not (read the row), or the other way round (find
 * the address), fewest rules left on the average first; looks that would tell nothing are left out.
 */
export function lookNext(
  families: readonly Family[],
  installed: readonly Installed[],
  areSamplesRead: boolean,
): NextLook[] {
  const rules = families.reduce((sum, family) => sum + family.rules, 0n);
  if (rules <= 1n) return [];
  const ruleCount = Number(rules);
  let drawn: Drawn[] | undefined;
  const draw = (): Drawn[] => {
    drawn ??= drawEvenly(families, rules);
    return drawn;
  };
  const looks: NextLook[] = [];
  for (const module of installed) {
    const { address, positions } = module;
    const unread = positions === undefined ? undefined : [...positions].filter((sign) => sign === "?").length;
    if (address !== undefined && (unread === undefined || unread > 0)) {
      const expectedRules = areSamplesRead
        ? expectedAfterPositions(families, address)
        : expectedPositionsOver(
            draw().flatMap(({ family, rule }) => rowOf(rule, codedValue(family.shape, address)) ?? []),
            ruleCount,
          );
      looks.push({
        name: module.name,
        look: "positions",
        expectedRules,
        isExact: areSamplesRead || draw().length === ruleCount,
      });
    } else if (address === undefined && positions !== undefined && unread !== undefined && unread <= MAX_UNREAD) {
      const isExactly = areSamplesRead && unread === 0;
      const expectedRules = isExactly
        ? expectedAfterAddress(families, positions)
        : expectedAddressOver(
            draw().map(({ rule }) => addressesWhere(rule, (number) => positionAt(positions, number))),
            ruleCount,
          );
      looks.push({
        name: module.name,
        look: "address",
        expectedRules,
        isExact: isExactly || draw().length === ruleCount,
      });
    }
  }
  return looks
    .filter((look) => look.expectedRules < ruleCount * (1 - 1e-9))
    .sort((a, b) => a.expectedRules - b.expectedRules);
}
