import { known, type Outcome, refused } from "../quantity/index.js";
import type { Balance } from "./balance.js";
import { type Network, networkFault } from "./network.js";
import { NetworkSolver } from "./solver.js";

export interface NetworkSolution {
  /** Volts above the reference, by node. */
  readonly nodeV: Float64Array;
  /** From `from` to `to`, by branch. */
  readonly branchA: Float64Array;
  readonly loadA: Float64Array;
  /** Groups of nodes that nothing joins to the reference; volts in them are above their own first node. */
  readonly islands: readonly (readonly number[])[];
  readonly balance: Balance;
  readonly iterations: number;
}

/**
 * At what volts and amperes does this network come to rest? Any number of supplies, loops and shared returns; nonlinear loads.
 * Refused with `no-operating-point` where a constant-power load can neither run nor stay out, where the point is not stable, or where the currents
 * cannot be balanced to a part in a thousand million; with `bad-network` where the network is not one.
 *
 * @example solveNetwork({ nodeCount: 2, reference: 0, branches: [{ from: 0, to: 1, resistanceOhm: 0.1, emfV: 12 }],
 *   loads: [{ from: 1, to: 0, model: { kind: "resistance", resistanceOhm: 0.5 } }] }) // 10 V, 20 A
 */
export function solveNetwork(network: Network): Outcome<NetworkSolution> {
  const fault = networkFault(network);
  if (fault !== undefined) return refused("bad-network", fault);
  const solver = new NetworkSolver(network);
  const status = solver.run();
  if (status !== "solved") return refused("no-operating-point", whyNot(status, solver.goingOut));
  return known({
    nodeV: solver.nodeV.slice(),
    branchA: solver.branchA.slice(),
    loadA: solver.loadA.slice(),
    islands: solver.islands,
    balance: solver.balance,
    iterations: solver.iterations,
  });
}

const whyNot = (status: string, goingOut: readonly number[]): string =>
  status === "going-out"
    ? `loads ${goingOut.join(", ")} can neither run nor stay out: the volts fall below their drop-out when they draw and rise above it when they do not`
    : status === "unstable"
      ? "the point found is not stable: the loads would pull the volts down further"
      : "the currents could not be balanced: there is no point at which the loads get what they draw";
