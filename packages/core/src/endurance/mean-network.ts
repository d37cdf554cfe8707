import { buildCoach, type CoachNetwork, type Network, type NetworkLoad, solveNetwork } from "../network/index.js";
import { known, type Outcome } from "../quantity/index.js";
import type { CoachIndex } from "../record/index.js";
import type { BankGroup } from "./bank-groups.js";
import { dutiesOf, type SpanUse } from "./profile-circuits.js";
import type { RestVolts } from "./rest-volts.js";
import { scaledLoad } from "./scaled-load.js";

/** What draws in one state: a load of the record, or a module's own electronics. */
export interface Drawer {
  readonly kind: "load" | "module";
  readonly id: string;
  readonly networkLoad: number;
  readonly meanRatio: number;
}

/** Mean currents of one state at one charge. */
export interface MeanPoint {
  /** Out of the batteries of each group, A; negative while they are charged. */
  readonly groupA: readonly number[];
  readonly groupV: readonly number[];
  /** By drawer: mean current and the volts while it is on. */
  readonly drawerA: readonly number[];
  readonly drawerV: readonly number[];
}

/**
 * One span of a profile as a network of mean currents: a circuit that is on for a share of the time at a duty loads everything it shares (feeders, bars,
 * battery) with its mean current, and its own wires, fuse and contact with its on current. The resistances of its own way are divided by share times
 * duty for that, and its loads draw that part. With all shares and duties 1 it is the state itself, as `solveCoach` solves it.
 */
export class MeanNetwork {
  readonly drawers: readonly Drawer[];
  private readonly network: Network;

  private constructor(
    readonly coach: CoachNetwork,
    private readonly groups: readonly BankGroup[],
    private readonly rest: RestVolts,
    use: SpanUse,
  ) {
    const { network } = coach;
    const ohm = network.branches.map((branch) => branch.resistanceOhm);
    const loads: NetworkLoad[] = [...network.loads];
    const drawers: Drawer[] = [];
    for (const wiring of coach.circuits) {
      const of = use.circuits.get(wiring.circuit.id);
      const meanRatio = (of?.shareRatio ?? 1) * (of?.dutyRatio ?? 1);
      const own = [
        wiring.entryBranch,
        wiring.outBranch,
        wiring.returnBranch,
        ...wiring.loads.map((load) => load.tailBranch),
      ];
      for (const branch of own) if (branch >= 0) ohm[branch] = ohm[branch]! / meanRatio;
      for (const load of wiring.loads) {
        if (load.networkLoad < 0) continue;
        const was = network.loads[load.networkLoad]!;
        loads[load.networkLoad] = { ...was, model: scaledLoad(was.model, meanRatio) };
        drawers.push({ kind: "load", id: load.load.id, networkLoad: load.networkLoad, meanRatio });
      }
    }
    for (const { module, quiescentLoad } of coach.modules)
      drawers.push({ kind: "module", id: module.id, networkLoad: quiescentLoad, meanRatio: 1 });
    this.drawers = drawers;
    this.network = { ...network, loads, branches: network.branches.map((b, i) => ({ ...b, resistanceOhm: ohm[i]! })) };
  }

  static of(index: CoachIndex, use: SpanUse, groups: readonly BankGroup[], rest: RestVolts): Outcome<MeanNetwork> {
    const { chargerOn, engineOn } = use;
    const built = buildCoach(index, {
      name: use.name,
      on: new Set(use.circuits.keys()),
      dutyRatio: dutiesOf(use),
      chargerOn,
      engineOn,
      chargeRatio: 0.5,
    });
    return built.kind === "known" ? known(new MeanNetwork(built.value, groups, rest, use)) : built;
  }

  /** The network at this charge of every battery: for a second opinion on it. */
  networkAt(chargeRatio: number): Network {
    const volts = this.rest.at(chargeRatio);
    const branches = [...this.network.branches];
    for (const { supply, branch } of this.coach.supplies) {
      const emfV = volts.get(supply.id)?.emfV;
      if (branch >= 0 && emfV !== undefined) branches[branch] = { ...branches[branch]!, emfV };
    }
    return { ...this.network, branches };
  }

  /** Mean currents with every battery at this charge. Refused `no-operating-point` where the loads cannot all run. */
  at(chargeRatio: number): Outcome<MeanPoint> {
    const solved = solveNetwork(this.networkAt(chargeRatio));
    if (solved.kind !== "known") return solved;
    const { nodeV, branchA, loadA } = solved.value;
    const groupA: number[] = [];
    const groupV: number[] = [];
    for (const group of this.groups) {
      const own = this.coach.supplies.filter((one) => group.supplies.includes(one.supply.id));
      groupA.push(own.reduce((sum, one) => sum + branchA[one.branch]!, 0));
      groupV.push(nodeV[own[0]!.positive]! - nodeV[own[0]!.negative]!);
    }
    return known({
      groupA,
      groupV,
      drawerA: this.drawers.map((drawer) => loadA[drawer.networkLoad]!),
      drawerV: this.drawers.map(({ networkLoad }) => {
        const { from, to } = this.network.loads[networkLoad]!;
        return nodeV[from]! - nodeV[to]!;
      }),
    });
  }
}
