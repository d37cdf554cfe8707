import type { ChainOption, ChainPattern, ChainProblem } from "./chain-problem.js";
import { type SlotStates, slotStatesOf, takenCode } from "./slot-states.js";

/** A pattern laid out for fast search: its circuits, and for each the options it has there. */
export interface PreparedPattern {
  readonly at: number;
  readonly pattern: ChainPattern;
  readonly states: SlotStates;
  /** For each circuit of its module what holding it next door costs at least. */
  readonly away: ReadonlyMap<number, Away>;
  /** What touching its module adds to a bound: its part of the cost of the places that this opens. */
  readonly share: number;
  /** Where the prices of the part it takes and of the one it gives back stand, behind those of the circuits; -1: none. */
  readonly fitsAt: number;
  readonly freesAt: number;
  /** Places of the circuits in the problem. */
  readonly circuits: Int32Array;
  /** Options of circuit `i` are `from[i]` up to `from[i + 1]`. */
  readonly from: Int32Array;
  /** Of each option: its place in the pattern's list, its circuit's place in `circuits`, which module's circuit it is (0 the one before, 1 own, 2 the one after) and its bit there. */
  readonly option: Int32Array;
  readonly owner: Int32Array;
  readonly side: Uint8Array;
  readonly bit: Int32Array;
  /** States that follow when it is taken. */
  readonly after: readonly Int16Array[];
  readonly microA: Int32Array;
  readonly cost: Float64Array;
  readonly value: Float64Array;
  readonly wires: Float64Array;
}

/** What a circuit costs at least, and moves, where a neighbour holds it. */
export interface Away {
  readonly cost: number;
  readonly wires: number;
}

export interface Prepared {
  readonly problem: ChainProblem;
  readonly modules: readonly (readonly PreparedPattern[])[];
  /** Circuits of each module as a bit mask, and how many. */
  readonly whole: readonly number[];
  readonly size: readonly number[];
  /** Places that work on each module opens, as a bit mask. */
  readonly opens: readonly number[];
}

/** More circuits on one module, or more places, than this do not fit the bit masks. */
export const MOST_CIRCUITS_OF_MODULE = 17;
export const MOST_PLACES = 24;

function preparePattern(
  problem: ChainProblem,
  bits: Int32Array,
  share: number,
  away: ReadonlyMap<number, Away>,
  module: number,
  at: number,
): PreparedPattern {
  const pattern = problem.modules[module]?.patterns[at] as ChainPattern;
  const order = pattern.options
    .map((option, i) => ({ option, i }))
    .sort((a, b) => a.option.circuit - b.option.circuit || a.i - b.i);
  const circuits = Int32Array.from(new Set(order.map(({ option }) => option.circuit)));
  const from = new Int32Array(circuits.length + 1);
  const owner = Int32Array.from(order, ({ option }) => circuits.indexOf(option.circuit));
  for (const i of owner) from[i + 1] = (from[i + 1] as number) + 1;
  for (let i = 0; i < circuits.length; i++) from[i + 1] = (from[i + 1] as number) + (from[i] as number);
  const states = slotStatesOf(pattern);
  const floats = (of: (option: ChainOption) => number): Float64Array =>
    Float64Array.from(order, ({ option }) => of(option));
  return {
    at,
    pattern,
    states,
    away,
    share: pattern.isTouched ? share : 0,
    fitsAt: pattern.fits === undefined ? -1 : problem.homes.length + pattern.fits,
    freesAt: pattern.frees === undefined ? -1 : problem.homes.length + pattern.frees,
    circuits,
    from,
    option: Int32Array.from(order, ({ i }) => i),
    owner,
    side: Uint8Array.from(order, ({ option }) => (problem.homes[option.circuit] ?? module) - module + 1),
    bit: Int32Array.from(order, ({ option }) => bits[option.circuit] ?? 0),
    after: order.map(({ option }) => states.after[takenCode(option.takes)] as Int16Array),
    microA: Int32Array.from(order, ({ option }) => option.microA),
    cost: floats((option) => option.cost),
    value: floats((option) => option.value),
    wires: floats((option) => option.wires),
  };
}

/** For each circuit of a module the least that holding it next door costs; none where nobody can. */
function awayFrom(problem: ChainProblem, module: number): Map<number, Away> {
  const away = new Map<number, Away>();
  problem.homes.forEach((home, circuit) => {
    if (home !== module) return;
    let cost = Number.POSITIVE_INFINITY;
    let wires = Number.POSITIVE_INFINITY;
    for (const at of [module - 1, module + 1])
      for (const { options } of problem.modules[at]?.patterns ?? [])
        for (const option of options)
          if (option.circuit === circuit) {
            cost = Math.min(cost, option.cost);
            wires = Math.min(wires, option.wires);
          }
    away.set(circuit, { cost, wires });
  });
  return away;
}

/** The problem laid out for the search. */
export function prepare(problem: ChainProblem): Prepared {
  const size = problem.modules.map(() => 0);
  const bits = Int32Array.from(problem.homes, (home) => {
    const bit = 1 << (size[home] ?? 0);
    size[home] = (size[home] ?? 0) + 1;
    return bit;
  });
  const away = problem.modules.map((_, m) => awayFrom(problem, m));
  // However many modules of a place are touched, their shares together are no more than its opening costs.
  const shares = problem.places.map(
    (cost, place) => cost / Math.max(1, problem.modules.filter(({ places }) => places.includes(place)).length),
  );
  return {
    problem,
    modules: problem.modules.map((module, m) => {
      const share = module.places.reduce((sum, place) => sum + (shares[place] ?? 0), 0);
      return module.patterns.map((_, at) =>
        preparePattern(problem, bits, share, away[m] as ReadonlyMap<number, Away>, m, at),
      );
    }),
    whole: size.map((count) => 2 ** count - 1),
    size,
    opens: problem.modules.map(({ places }) => places.reduce((mask, place) => mask | (1 << place), 0)),
  };
}
