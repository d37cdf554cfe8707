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
  for (let b = 0; b < branches.length; b++) {
    const branch = branches[b]!;
    if (!isNode(branch.from) || !isNode(branch.to))
      return `branches[${b}]: its ends must be nodes 0 to ${nodeCount - 1}`;
    if (!(branch.resistanceOhm > 0 && Number.isFinite(branch.resistanceOhm)))
      return `branches[${b}].resistanceOhm: a number above 0 is wanted, got ${branch.resistanceOhm}`;
    if (!Number.isFinite(branch.emfV ?? 0)) return `branches[${b}].emfV: a number is wanted, got ${branch.emfV}`;
  }
  for (let k = 0; k < loads.length; k++) {
    const load = loads[k]!;
    if (!isNode(load.from) || !isNode(load.to)) return `loads[${k}]: its ends must be nodes 0 to ${nodeCount - 1}`;
    const wrong = modelFault(load.model);
    if (wrong !== undefined) return `loads[${k}].${wrong}`;
  }
  return undefined;
}

const above = (name: string, value: number): string | undefined =>
  value > 0 && Number.isFinite(value) ? undefined : `${name}: a number above 0 is wanted, got ${value}`;

const notBelow = (name: string, value: number): string | undefined =>
  value >= 0 && Number.isFinite(value) ? undefined : `${name}: a number from 0 up is wanted, got ${value}`;

function modelFault(model: LoadModel): string | undefined {
  switch (model.kind) {
    case "resistance":
      return above("resistanceOhm", model.resistanceOhm);
    case "current":
      return notBelow("currentA", model.currentA) ?? above("kneeV", model.kneeV);
    case "power":
      return notBelow("powerW", model.powerW) ?? above("dropOutV", model.dropOutV);
    case "led":
      return (
        notBelow("forwardV", model.forwardV) ??
        above("resistanceOhm", model.resistanceOhm) ??
        above("bendV", model.bendV ?? 1) ??
        above("aboveOhm", model.aboveOhm ?? 1)
      );
    case "filament":
      return notBelow("currentA", model.currentA) ?? above("ratedV", model.ratedV);
    case "motor":
      return notBelow("runningA", model.runningA) ?? above("stallOhm", model.stallOhm);
    case "regulated":
      return above("setV", model.setV) ?? above("outputOhm", model.outputOhm) ?? notBelow("maxA", model.maxA);
  }
}
