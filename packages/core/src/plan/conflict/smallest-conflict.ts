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

/** Wishes first, then choices, then what is physical: what stands first is kept in the conflict where there is a choice between conflicts. */
const RANK = { wish: 0, choice: 1, physical: 2 } as const;

/**
 * Which of these groups are in each other's way? A smallest set in the sense that every part of it can be kept: dividing search after Junker,
 * "QuickXplain" (AAAI 2004; from memory). Physical groups are the first to be dropped, so that the answer names what somebody may choose wherever that is
 * the reason; among groups of one nature the order given decides. With several conflicts one is named.
 */
export async function smallestConflict(tester: GroupTester, groups: readonly ConflictGroup[]): Promise<Conflict> {
  const ordered = [...groups].sort((a, b) => RANK[a.nature] - RANK[b.nature]);
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
