import { copperOhmMm2PerM } from "../../tables/index.js";
import { nominalVOf } from "../build-coach.js";
import { CLASS_FIGURES } from "../class-figures.js";
import type { CoachNetwork } from "../coach-network.js";
import { filamentPulseRatio } from "../pulsed-model.js";
import { LEAST_OHM, type Series } from "../series.js";
import type { NetworkSolver } from "../solver.js";
import type { InputBank } from "./input-bank.js";
import { type LoadDraw, loadDrawOf } from "./load-draw.js";

/** What one kelvin adds to the resistivity of copper, ohm mm2/m: the law is a straight line. */
const PER_KELVIN = copperOhmMm2PerM(1) - copperOhmMm2PerM(0);

/** A load of the network and the places of its figures in the bank; -1 where it has none. */
interface DrawnLoad {
  readonly k: number;
  readonly draw: LoadDraw;
  readonly stated: number;
  readonly spread: number;
  readonly shape: number;
}

/** Puts the figures of a bank into a solver: which figure makes which resistance and which load is worked out once, then nothing is allocated. */
export class NetworkDraw {
  /** Branches in order of their terms; by branch from where to where its terms are. */
  private readonly branch: Int32Array;
  private readonly termEnd: Int32Array;
  /** By term: the places of its figures; a single figure has no area. */
  private readonly first: Int32Array;
  private readonly area: Int32Array;
  private readonly lay: Int32Array;
  /** Resistivity at the zone's excess over an ambient of 0 C; the ambient adds its share. */
  private readonly ohmMm2PerM: Float64Array;
  private readonly ambient: number;
  private readonly loads: readonly DrawnLoad[];
  private readonly quiescent: readonly { readonly k: number; readonly at: number }[];
  private readonly batteries: readonly { readonly branch: number; readonly emf: number; readonly ohm: number }[];
  private readonly regulated: readonly { k: number; set: number; output: number; most: number }[];
  private readonly quiescentKneeV: number;

  constructor(
    coach: CoachNetwork,
    private readonly bank: InputBank,
    private readonly solver: NetworkSolver,
  ) {
    const branch: number[] = [];
    const termEnd: number[] = [];
    const terms: { first: number; area: number; lay: number; rho: number; ambient: number }[] = [];
    const add = (b: number, way: Series | undefined) => {
      if (b < 0 || way === undefined) return;
      for (const { draw } of way.pieces)
        terms.push(
          draw.kind === "figure"
            ? { first: bank.add(draw.ohm), area: -1, lay: -1, rho: 0, ambient: -1 }
            : {
                first: bank.add(draw.length),
                area: bank.add(draw.area),
                lay: draw.lay === undefined ? -1 : bank.add(draw.lay),
                rho: copperOhmMm2PerM(draw.overAmbientK),
                ambient: bank.add(draw.ambient),
              },
        );
      branch.push(b);
      termEnd.push(terms.length);
    };
    const loads: DrawnLoad[] = [];
    const nominalV = nominalVOf(coach.index);
    for (const cable of coach.cables) add(cable.branch, cable.series);
    for (const wiring of coach.circuits) {
      add(wiring.entryBranch, wiring.entry);
      add(wiring.outBranch, wiring.out);
      add(wiring.returnBranch, wiring.back);
      for (const load of wiring.loads) {
        add(load.tailBranch, load.tail);
        if (load.networkLoad < 0) continue;
        const full = loadDrawOf(load.load, nominalV, load.path, coach.state.stalled?.has(load.load.id));
        if (full === undefined) continue;
        const pulse =
          full.kind === "filament" ? filamentPulseRatio(coach.state.dutyRatio?.get(wiring.circuit.id) ?? 1) : 1;
        const draw = { ...full, perUnit: full.perUnit * pulse };
        const { stated, spread, shape } = draw;
        loads.push({
          k: load.networkLoad,
          draw,
          stated: bank.add(stated),
          spread: spread === undefined ? -1 : bank.add(spread),
          shape: shape === undefined ? -1 : bank.add(shape),
        });
      }
    }
    this.loads = loads;
    this.quiescent = coach.modules.map((one) => ({ k: one.quiescentLoad, at: bank.add(one.quiescent) }));
    this.quiescentKneeV = CLASS_FIGURES.kneeRatio.value * nominalV;
    const batteries: { branch: number; emf: number; ohm: number }[] = [];
    const regulated: { k: number; set: number; output: number; most: number }[] = [];
    for (const { inputs, branch: b, load } of coach.supplies)
      if (inputs.kind === "battery")
        batteries.push({ branch: b, emf: bank.add(inputs.emf), ohm: bank.add(inputs.ohm) });
      else
        regulated.push({
          k: load,
          set: bank.add(inputs.set),
          output: bank.add(inputs.output),
          most: bank.add(inputs.most),
        });
    this.batteries = batteries;
    this.regulated = regulated;
    this.branch = Int32Array.from(branch);
    this.termEnd = Int32Array.from(termEnd);
    this.first = Int32Array.from(terms, (term) => term.first);
    this.area = Int32Array.from(terms, (term) => term.area);
    this.lay = Int32Array.from(terms, (term) => term.lay);
    this.ambient = terms.find((term) => term.ambient >= 0)?.ambient ?? -1;
    this.ohmMm2PerM = Float64Array.from(terms, (term) => term.rho);
  }

  /** Puts the figures now in the bank into the solver. */
  put(): void {
    const { branch, termEnd, first, area, lay, ohmMm2PerM, solver } = this;
    const { value } = this.bank;
    const warmerOhmMm2PerM = this.ambient < 0 ? 0 : PER_KELVIN * value[this.ambient]!;
    let t = 0;
    for (let n = 0; n < branch.length; n++) {
      let sum = 0;
      for (const end = termEnd[n]!; t < end; t++) {
        const a = area[t]!;
        const one = value[first[t]!]!;
        if (a < 0) sum += Math.max(0, one);
        else {
          const l = lay[t]!;
          sum += ((ohmMm2PerM[t]! + warmerOhmMm2PerM) * one * (l < 0 ? 1 : value[l]!)) / value[a]!;
        }
      }
      solver.ohm[branch[n]!] = Math.max(LEAST_OHM, sum);
    }
    for (let n = 0; n < this.batteries.length; n++) {
      const battery = this.batteries[n]!;
      const ohm = value[battery.ohm]!;
      solver.ohm[battery.branch] = Math.max(LEAST_OHM, ohm);
      solver.emfV[battery.branch] = value[battery.emf]!;
    }
    const table = solver.loads;
    for (let n = 0; n < this.regulated.length; n++) {
      const { k, set, output, most } = this.regulated[n]!;
      table.putRegulated(k, value[set]!, Math.max(value[output]!, LEAST_OHM), value[most]!);
    }
    for (let n = 0; n < this.quiescent.length; n++) {
      const { k, at } = this.quiescent[n]!;
      table.putCurrent(k, Math.max(0, value[at]!), this.quiescentKneeV);
    }
    for (let n = 0; n < this.loads.length; n++) {
      const load = this.loads[n]!;
      const spread = load.spread < 0 ? 1 : value[load.spread]!;
      const shape = load.shape < 0 ? 0 : value[load.shape]!;
      putDraw(table, load.k, load.draw, value[load.stated]!, spread, shape);
    }
  }
}

/** The load's model at these figures, as `loadFiguresOf` makes it: what is stated, the class spread (1 where none), the shape (0 where none). */
function putDraw(
  table: NetworkSolver["loads"],
  k: number,
  draw: LoadDraw,
  stated: number,
  spread: number,
  shape: number,
): void {
  const { ratedV, pieces } = draw;
  if (draw.by === "resistor") {
    table.putLed(k, shape, Math.max(stated, 1e-6) / pieces);
    return;
  }
  const currentA = stated * draw.perUnit * spread;
  if (draw.by === "stalled") {
    table.putResistance(k, ratedV / Math.max(1e-9, currentA));
    return;
  }
  switch (draw.kind) {
    case "resistance":
      table.putResistance(k, ratedV / Math.max(1e-9, currentA));
      return;
    case "filament":
      table.putFilament(k, currentA, ratedV);
      return;
    case "power":
      table.putPower(k, currentA * ratedV, Math.max(1e-3, shape));
      return;
    case "motor": {
      const stallA = Math.max(currentA, draw.isStallRatio ? shape * currentA : shape * pieces, 1e-9);
      table.putMotor(k, currentA, ratedV / stallA);
      return;
    }
    case "led": {
      const forwardV = Math.min(shape, 0.95 * ratedV);
      table.putLed(k, forwardV, (ratedV - forwardV) / Math.max(currentA, 1e-9));
      return;
    }
    default:
      table.putCurrent(k, currentA, draw.kneeV);
      return;
  }
}
