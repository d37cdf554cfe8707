import { known, type Outcome } from "../../quantity/index.js";
import type { CableId, CircuitId, LoadId, ModuleId, SupplyId } from "../../record/index.js";
import type { CoachNetwork } from "../coach-network.js";
import type { CoachSolution } from "../results.js";
import type { NetworkSolver } from "../solver.js";
import type { CoachSamples, SampledLoad, SampledSupply } from "./samples.js";

interface LoadSheet extends SampledLoad {
  readonly k: number;
  readonly from: number;
  readonly to: number;
  readonly positive: number;
  readonly negative: number;
}

interface SumSheet {
  readonly loads: Int32Array;
  readonly currentA: Float64Array;
}

interface CableSheet {
  readonly branch: number;
  readonly currentA: Float64Array | undefined;
  readonly dropV: Float64Array | undefined;
}

interface SupplySheet extends SampledSupply {
  readonly branch: number;
  readonly load: number;
  readonly positive: number;
  readonly negative: number;
}

type Sampled = Pick<CoachSamples, "loads" | "circuitA" | "moduleA" | "cableA" | "cableDropV" | "supplies">;

/** The arrays that the samples' results go into, and where in the network each is read. What is not known in `nominal` gets none. */
export class Sheets {
  private readonly loadSheets: LoadSheet[] = [];
  private readonly sumSheets: SumSheet[] = [];
  private readonly cableSheets: CableSheet[] = [];
  private readonly supplySheets: SupplySheet[] = [];
  private readonly nominal: CoachSolution;
  private readonly loads = new Map<LoadId, LoadSheet>();
  private readonly circuits = new Map<CircuitId, SumSheet>();
  private readonly modules = new Map<ModuleId, SumSheet>();
  private readonly cables = new Map<CableId, CableSheet>();
  private readonly supplies = new Map<SupplyId, SupplySheet>();
  /** How many numbers all arrays hold together. */
  size = 0;

  constructor(
    coach: CoachNetwork,
    nominal: CoachSolution,
    private readonly samples: number,
  ) {
    this.nominal = nominal;
    const ofModule = new Map<string, number[]>();
    for (const wiring of coach.circuits) {
      const set = wiring.loads.map((load) => load.networkLoad).filter((k) => k >= 0);
      if (nominal.circuitA.get(wiring.circuit.id)?.kind === "known")
        this.circuits.set(wiring.circuit.id, this.sumSheet(set));
      const { module } = wiring.circuit;
      if (module !== undefined) ofModule.set(module, [...(ofModule.get(module) ?? []), ...set]);
      for (const { load, networkLoad } of wiring.loads) {
        if (this.loads.has(load.id) || nominal.loads.get(load.id)?.kind !== "known" || !wiring.supply) continue;
        const { from, to } = coach.network.loads[networkLoad]!;
        const { positive, negative } = wiring.supply;
        const sheet = { k: networkLoad, from, to, positive, negative, ...this.threeColumns() };
        this.loads.set(load.id, sheet);
        this.loadSheets.push(sheet);
      }
    }
    for (const { module, quiescentLoad } of coach.modules)
      if (nominal.moduleA.get(module.id)?.kind === "known")
        this.modules.set(module.id, this.sumSheet([...(ofModule.get(module.id) ?? []), quiescentLoad]));
    for (const { cable, branch } of coach.cables) {
      const column = (of: Outcome<number> | undefined) => (of?.kind === "known" ? this.column() : undefined);
      const currentA = column(nominal.cableA.get(cable.id));
      const sheet = { branch, currentA, dropV: column(nominal.cableDropV.get(cable.id)) };
      this.cables.set(cable.id, sheet);
      if (branch >= 0) this.cableSheets.push(sheet);
    }
    for (const { supply, branch, load, positive, negative } of coach.supplies) {
      const sheet = { branch, load, positive, negative, currentA: this.column(), terminalV: this.column() };
      this.supplies.set(supply.id, sheet);
      this.supplySheets.push(sheet);
    }
  }

  private column(): Float64Array {
    this.size += this.samples;
    return new Float64Array(this.samples);
  }

  private threeColumns(): SampledLoad {
    return { onV: this.column(), onA: this.column(), dropV: this.column() };
  }

  private sumSheet(set: readonly number[]): SumSheet {
    const sheet = { loads: Int32Array.from(set), currentA: this.column() };
    this.sumSheets.push(sheet);
    return sheet;
  }

  /** Writes the solver's point down at this place of every array. */
  write(place: number, { nodeV, branchA, loadA, ohm }: NetworkSolver): void {
    for (let n = 0; n < this.loadSheets.length; n++) {
      const sheet = this.loadSheets[n]!;
      const onV = nodeV[sheet.from]! - nodeV[sheet.to]!;
      sheet.onV[place] = onV;
      sheet.onA[place] = loadA[sheet.k]!;
      sheet.dropV[place] = nodeV[sheet.positive]! - nodeV[sheet.negative]! - onV;
    }
    for (let n = 0; n < this.sumSheets.length; n++) {
      const { loads, currentA } = this.sumSheets[n]!;
      let sum = 0;
      for (let k = 0; k < loads.length; k++) sum += loadA[loads[k]!]!;
      currentA[place] = sum;
    }
    for (let n = 0; n < this.cableSheets.length; n++) {
      const { branch, currentA, dropV } = this.cableSheets[n]!;
      const size = Math.abs(branchA[branch]!);
      if (currentA) currentA[place] = size;
      if (dropV) dropV[place] = size * ohm[branch]!;
    }
    for (let n = 0; n < this.supplySheets.length; n++) {
      const { branch, load, positive, negative, currentA, terminalV } = this.supplySheets[n]!;
      currentA[place] = branch >= 0 ? branchA[branch]! : -loadA[load]!;
      terminalV[place] = nodeV[positive]! - nodeV[negative]!;
    }
  }

  /** The arrays, cut to the places that were written. */
  read(solved: number): Sampled {
    const cut = (values: Float64Array) => (solved === this.samples ? values : values.subarray(0, solved));
    const each = <Id, T>(
      nominal: ReadonlyMap<Id, Outcome<unknown>>,
      of: (id: Id) => T | undefined,
    ): Map<Id, Outcome<T>> => {
      const map = new Map<Id, Outcome<T>>();
      for (const [id, outcome] of nominal) {
        const value = outcome.kind === "known" ? of(id) : undefined;
        if (value !== undefined) map.set(id, known(value));
        else if (outcome.kind !== "known") map.set(id, outcome);
      }
      return map;
    };
    const { nominal } = this;
    const cable = (of: "currentA" | "dropV") => (id: CableId) => {
      const values = this.cables.get(id)?.[of];
      return values && cut(values);
    };
    const sum = (sheet: SumSheet | undefined) => sheet && cut(sheet.currentA);
    return {
      loads: each(nominal.loads, (id) => {
        const sheet = this.loads.get(id);
        return sheet && { onV: cut(sheet.onV), onA: cut(sheet.onA), dropV: cut(sheet.dropV) };
      }),
      circuitA: each(nominal.circuitA, (id) => sum(this.circuits.get(id))),
      moduleA: each(nominal.moduleA, (id) => sum(this.modules.get(id))),
      cableA: each(nominal.cableA, cable("currentA")),
      cableDropV: each(nominal.cableDropV, cable("dropV")),
      supplies: new Map(
        [...this.supplies].map(([id, one]) => [id, { currentA: cut(one.currentA), terminalV: cut(one.terminalV) }]),
      ),
    };
  }
}
