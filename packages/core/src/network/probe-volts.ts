import type { CoachNetwork } from "./coach-network.js";
import { pointKey } from "./point-key.js";
import type { Series } from "./series.js";
import type { NetworkSolver } from "./solver.js";

/** What a voltmeter with its black probe on battery negative reads at every point whose way is known, by point key. */
export function probeVolts(coach: CoachNetwork, solver: NetworkSolver): Map<string, number> {
  const { nodeV, branchA } = solver;
  const volts = new Map<string, number>();
  const put = (at: string, terminal: string | undefined, v: number) => {
    volts.set(terminal === undefined ? at : pointKey({ at, terminal }), v);
  };
  for (const [id, node] of coach.nodeOf) put(id, undefined, nodeV[node]!);
  for (const { supply, positive, negative } of coach.supplies) {
    put(supply.id, "positive", nodeV[positive]!);
    put(supply.id, "negative", nodeV[negative]!);
  }
  for (const { module } of coach.modules) {
    const feed = module.feedNode === undefined ? undefined : coach.nodeOf.get(module.feedNode);
    if (feed !== undefined) put(module.id, "feed", nodeV[feed]!);
  }
  for (const wiring of coach.circuits) {
    const { circuit } = wiring;
    if (wiring.feedNode >= 0) {
      const way: Series | undefined = wiring.entry ?? wiring.out;
      const currentA = branchA[wiring.entry ? wiring.entryBranch : wiring.outBranch] ?? 0;
      let v = nodeV[wiring.feedNode]!;
      put(circuit.id, "fuse-in", v);
      for (const piece of way?.pieces ?? []) {
        v -= piece.ohm * currentA;
        if (piece.place === "fuse") put(circuit.id, "fuse-out", v);
        if (piece.place === "fuse" || piece.place === "module") put(circuit.id, "output", v);
      }
      if (wiring.out) put(circuit.id, "far-end", nodeV[wiring.farNode]!);
    }
    if (wiring.returnNode >= 0) put(circuit.id, "return-end", nodeV[wiring.returnNode]!);
    if (wiring.wayNeeds.length > 0) continue;
    for (const load of wiring.loads) {
      if (load.networkLoad < 0 || load.tailNeeds.length > 0) continue;
      const { from, to } = coach.network.loads[load.networkLoad]!;
      put(load.load.id, "positive", nodeV[from]!);
      put(load.load.id, "negative", nodeV[to]!);
    }
  }
  return volts;
}
