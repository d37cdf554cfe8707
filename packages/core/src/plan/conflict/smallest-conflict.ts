import type { ConflictGroup } from "./conflict-group.js";
import type { GroupTester } from "./group-tester.js";

/**
 * `conflict`: these groups cannot all hold, and would if any one were dropped. `none`: all groups can hold together. `stopped`: the solver was stopped.
 * An empty `conflict` means that the model has no answer even with no group holding.
 */
export type Conflict =
  | { readonly kind: "conflict"; readonly groups: readonly ConflictGroup[]; readonly solves: number }
  | { readonly kind: "none"; readonly solves: number }
  | { readonly kind: "stopped"; readonly solves: number };

class Stopped extends Error {}

const isPhysical = (group: ConflictGroup): boolean => group.nature === "physical";

/**
 * Which of these groups are in each other's way? A smallest set in the sense that every part of it can be kept: dividing search after Junker,
 * "QuickXplain" (AAAI 2004; from memory). Physical groups are the first to be dropped, so that the answer names what somebody may choose wherever that is
 * the reason; otherwise what stands first is kept where there is a choice. With several conflicts one is named.
 */
export async function smallestConflict(tester: GroupTester, groups: readonly ConflictGroup[]): Promise<Conflict> {
  const ordered = [...groups].sort((a, b) => Number(isPhysical(a)) - Number(isPhysical(b)));
  const isPossible = async (held: readonly ConflictGroup[]): Promise<boolean> => {
    const tested = await tester.test(held);
    if (tested === "unknown") throw new Stopped();
    return tested === "can-be";
  };
  const search = async (
    held: readonly ConflictGroup[],
    isNew: boolean,
    open: readonly ConflictGroup[],
  ): Promise<readonly ConflictGroup[]> => {
    if (isNew && !(await isPossible(held))) return [];
    if (open.length === 1) return open;
    const half = Math.ceil(open.length / 2);
    const first = open.slice(0, half);
    const second = open.slice(half);
    const fromSecond = await search([...held, ...first], true, second);
    const fromFirst = await search([...held, ...fromSecond], fromSecond.length > 0, first);
    return [...fromFirst, ...fromSecond];
  };
  try {
    if (await isPossible(ordered)) return { kind: "none", solves: tester.solves };
    const found = ordered.length === 0 ? [] : await search([], true, ordered);
    const inConflict = new Set(found);
    return {
      kind: "conflict",
      groups: ordered.filter((group) => inConflict.has(group)),
      solves: tester.solves,
    };
  } catch (error) {
    if (error instanceof Stopped) return { kind: "stopped", solves: tester.solves };
    throw error;
  }
}

/** Anybody can take in this many at a glance: no shorter one is sought. */
const SHORT_ENOUGH = 3;

/**
 * The smaller of the conflicts found in the order given and in its reverse (what is physical last in both); the first where they are alike or it is short. A conflict that no part of
 * it shares is not sought further: there may be a smaller one still.
 */
export async function smallestOfOrders(tester: GroupTester, groups: readonly ConflictGroup[]): Promise<Conflict> {
  const first = await smallestConflict(tester, groups);
  if (first.kind !== "conflict" || first.groups.length <= SHORT_ENOUGH) return first;
  const second = await smallestConflict(tester, [...groups].reverse());
  if (second.kind !== "conflict") return second;
  const inOrder = new Set(second.groups.length < first.groups.length ? second.groups : first.groups);
  return { kind: "conflict", groups: groups.filter((group) => inOrder.has(group)), solves: second.solves };
}
