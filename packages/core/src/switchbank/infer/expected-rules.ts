import { choices, fitting, ReadFamily } from "./class-arithmetic.js";
import type { Family } from "./family.js";
import type { WeightsCode } from "./inference.js";

/**
 * Rules left on the average after reading the switches of a module that answers to `address`, where every sample was read in full. Exact: the
 * outcomes are summed class by class for each pair of families. A switch that a rule does not count stands either way with equal chance.
 */
export function expectedAfterPositions(families: readonly Family[], address: number): number {
  const sizes = families[0]!.classes.map((each) => each.members.length);
  const width = sizes.reduce((a, b) => a + b, 0);
  const live = families.flatMap((family) => {
    const needs = new ReadFamily(family).needsFor(address);
    return needs ? [{ needs, counting: family.shape.counting }] : [];
  });
  const rules = families.reduce((sum, family) => sum + Number(family.rules), 0);
  const vectors = live.map(({ needs }) =>
    sizes.map((size, c) => Array.from({ length: size + 1 }, (_, ones) => fitting(needs, c, size, ones))),
  );
  const multiplicity = sizes.map((size) => Array.from({ length: size + 1 }, (_, ones) => choices(size, ones)));
  let total = 0;
  live.forEach((one, i) => {
    live.forEach((_, j) => {
      let product = 2 ** -(width - one.counting);
      for (let c = 0; c < sizes.length && product > 0; c++) {
        let sum = 0;
        for (let ones = 0; ones <= sizes[c]!; ones++)
          sum += multiplicity[c]![ones]! * vectors[i]![c]![ones]! * vectors[j]![c]![ones]!;
        product *= sum;
      }
      total += product;
    });
  });
  return total / rules;
}

/** Rules left on the average after finding the address of a module whose row was read in full; every sample was read in full. Exact. */
export function expectedAfterAddress(families: readonly Family[], positions: string): number {
  const rules = families.reduce((sum, family) => sum + Number(family.rules), 0);
  const ofAddress = new Map<number, number>();
  for (const family of families) {
    const read = new ReadFamily(family);
    const ones = family.classes.map(
      (each) => each.members.filter((member) => (positions[member.switch - 1] === "1") !== (member.flip === 1)).length,
    );
    const { firstAddress, counting } = family.shape;
    for (let address = firstAddress; address < firstAddress + 2 ** counting; address++) {
      const needs = read.needsFor(address)!;
      let product = 1;
      for (let c = 0; c < ones.length && product > 0; c++)
        product *= fitting(needs, c, family.classes[c]!.members.length, ones[c]!);
      if (product > 0) ofAddress.set(address, (ofAddress.get(address) ?? 0) + product);
    }
  }
  let total = 0;
  for (const count of ofAddress.values()) total += count * count;
  return total / rules;
}

/** Mean over a list of rules, scaled to all of them: one rule is the true one, each other stays with the share of pairs that agree. */
const scaled = (agreeingPairs: number, listed: number, rules: number): number =>
  listed < 2 ? rules : 1 + ((rules - 1) * agreeingPairs) / (listed * (listed - 1));

/** As `expectedAfterPositions`, over rules written out: all of them (exact) or drawn evenly (an estimate). */
export function expectedPositionsOver(
  rules: readonly { readonly mask: number; readonly value: number }[],
  ruleCount: number,
): number {
  let agreeing = 0;
  for (const a of rules)
    for (const b of rules) {
      if (a === b || ((a.value ^ b.value) & a.mask & b.mask) !== 0) continue;
      agreeing += 2 ** -onesIn(b.mask & ~a.mask);
    }
  return scaled(agreeing, rules.length, ruleCount);
}

/** As `expectedAfterAddress`, over rules written out; each gives the addresses that it allows the row. */
export function expectedAddressOver(addresses: readonly (readonly number[])[], ruleCount: number): number {
  const fitting = new Map<number, number>();
  const chance = new Map<number, number>();
  for (const list of addresses)
    for (const address of list) {
      fitting.set(address, (fitting.get(address) ?? 0) + 1);
      chance.set(address, (chance.get(address) ?? 0) + 1 / list.length);
    }
  let pairs = 0;
  for (const [address, count] of fitting) pairs += count * chance.get(address)!;
  return scaled(pairs - addresses.length, addresses.length, ruleCount);
}

function onesIn(mask: number): number {
  let count = 0;
  for (let left = mask; left !== 0; left &= left - 1) count++;
  return count;
}

/** A row as two numbers: which switches a rule counts, and how they stand for this address. Undefined where it cannot give the address. */
export function rowOf(
  rule: WeightsCode,
  coded: number | undefined,
): { readonly mask: number; readonly value: number } | undefined {
  if (coded === undefined) return undefined;
  let mask = 0;
  let value = 0;
  for (const each of rule.switches) {
    const bit = 1 << (each.switch - 1);
    mask |= bit;
    if (((coded & each.weight) !== 0) === (each.onMeans === 1)) value |= bit;
  }
  return { mask, value };
}
