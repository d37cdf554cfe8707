import type { LoadModel } from "./load-model.js";

/**
 * A resistance from one node to another, with a source in it where `emfV` is given. Its current runs from `from` to `to`:
 * V(from) - V(to) + emfV = resistanceOhm * currentA. A battery is a branch from its negative to its positive.
 */
export interface NetworkBranch {
  readonly from: number;
  readonly to: number;
  readonly resistanceOhm: number;
  readonly emfV?: number;
}

/** A load between two nodes; its current runs from `from` to `to`. Regulated sources are loads whose draw is negative. */
export interface NetworkLoad {
  readonly from: number;
  readonly to: number;
  readonly model: LoadModel;
}

/** Nodes are 0 to nodeCount - 1; `reference` is at 0 V. */
export interface Network {
  readonly nodeCount: number;
  readonly reference: number;
  readonly branches: readonly NetworkBranch[];
  readonly loads: readonly NetworkLoad[];
}

/** What is wrong with a network as data, if anything. */
export function networkFault(network: Network): string | undefined {
  const { nodeCount, reference, branches, loads } = network;
  const isNode = (n: number) => Number.isInteger(n) && n >= 0 && n < nodeCount;
  if (!isNode(reference)) return `reference: a node from 0 to ${nodeCount - 1} is wanted, got ${reference}`;
  for (const [b, branch] of branches.entries()) {
    if (!isNode(branch.from) || !isNode(branch.to))
      return `branches[${b}]: its ends must be nodes 0 to ${nodeCount - 1}`;
    if (!(branch.resistanceOhm > 0 && Number.isFinite(branch.resistanceOhm)))
      return `branches[${b}].resistanceOhm: a number above 0 is wanted, got ${branch.resistanceOhm}`;
    if (!Number.isFinite(branch.emfV ?? 0)) return `branches[${b}].emfV: a number is wanted, got ${branch.emfV}`;
  }
  for (const [k, load] of loads.entries()) {
    if (!isNode(load.from) || !isNode(load.to)) return `loads[${k}]: its ends must be nodes 0 to ${nodeCount - 1}`;
    for (const [name, value] of Object.entries(load.model))
      if (
        typeof value === "number" &&
        !(Number.isFinite(value) && (value > 0 || (value === 0 && MAY_BE_ZERO.has(name))))
      )
        return `loads[${k}].${name}: a number above 0 is wanted, got ${value}`;
  }
  return undefined;
}

const MAY_BE_ZERO = new Set(["currentA", "powerW", "runningA", "forwardV", "maxA"]);
