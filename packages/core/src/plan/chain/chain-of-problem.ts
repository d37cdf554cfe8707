import type { Choice, MovesProblem, Placing } from "../moves/index.js";
import type { ChainModule, ChainOption, ChainPattern, ChainPoint, ChainProblem } from "./chain-problem.js";
import { MOST_CIRCUITS_OF_MODULE, MOST_PLACES } from "./prepared.js";
import { rowOfModules } from "./row-of-modules.js";

/** The problem as a row of modules, and the way back. */
export interface ChainForm {
  readonly chain: ChainProblem;
  /** Paid by every solution but the one in which nothing is worked on: places that all modules open. It is not in the chain's costs. In sixtieths of a cent. */
  readonly alwaysPaid: number;
  choiceOf(point: ChainPoint): Choice;
}

/** Currents in whole millionths of an ampere; what never binds is cut to a number that fits. */
const MOST_MICRO_A = 2e9;
const microA = (currentA: number): number => Math.min(MOST_MICRO_A, Math.round(currentA * 1e6));

/** A feeder limit that some choice could break. */
function canBind(problem: MovesProblem): boolean {
  return problem.feeders.some((feeder) => {
    const most = problem.circuits.reduce((sum, circuit) => {
      const drawn = circuit.placings.map(
        (placing) =>
          (placing.module !== undefined && feeder.modules.includes(placing.module) ? placing.currentA : 0) +
          (feeder.modules.includes(circuit.home) ? placing.steadyA : 0),
      );
      return sum + Math.max(0, ...drawn);
    }, 0);
    return most > feeder.mostA + 5e-7;
  });
}

/** Why this problem is not one of a row of modules; undefined: it is. */
export function notAChain(problem: MovesProblem): "minutes" | "feeders" | "size" | "reach" | undefined {
  if (problem.mostMinutes !== undefined) return "minutes";
  if (canBind(problem)) return "feeders";
  const sizes = problem.modules.map((_, m) => problem.circuits.filter((circuit) => circuit.home === m).length);
  if (sizes.some((size) => size > MOST_CIRCUITS_OF_MODULE) || problem.places.length > MOST_PLACES) return "size";
  return rowOfModules(problem) === undefined ? "reach" : undefined;
}

interface Source {
  readonly circuit: number;
  readonly placing: number;
}

function optionsFor(problem: MovesProblem, module: number): { readonly from: Source; readonly placing: Placing }[] {
  return problem.circuits.flatMap((circuit, c) =>
    circuit.placings.flatMap((placing, j) =>
      (placing.module ?? circuit.home) === module ? [{ from: { circuit: c, placing: j }, placing }] : [],
    ),
  );
}

/** The problem as a row of modules, cost and value counted in its units. Only where `notAChain` finds no reason. */
export function chainOfProblem(problem: MovesProblem): ChainForm {
  const { costUnit, valueUnit } = problem;
  const row = rowOfModules(problem) ?? [];
  const seat = new Map(row.map((module, at) => [module, at]));
  const isAlways = (place: number): boolean => problem.modules.every(({ places }) => places.includes(place));
  const sources: Source[][][] = [];
  const modules = row.map((m): ChainModule => {
    const module = problem.modules[m];
    const here = optionsFor(problem, m);
    const kept: Source[][] = [];
    sources.push(kept);
    const patterns = (module?.patterns ?? []).map((pattern, p): ChainPattern => {
      const mine = here.filter(({ placing }) => placing.module === undefined || placing.patterns.includes(p));
      kept.push(mine.map(({ from }) => from));
      return {
        cost: pattern.cost / costUnit,
        value: pattern.value / valueUnit,
        isTouched: pattern.isTouched,
        fits: pattern.part,
        frees: pattern.frees,
        slots: pattern.slots,
        dimmable: pattern.dimmable,
        switchable: pattern.switchable,
        limitMicroA: microA(pattern.mostA),
        options: mine.map(
          ({ from, placing }): ChainOption => ({
            circuit: from.circuit,
            takes: {
              slot: placing.module !== undefined,
              dimmable: placing.takesDimmable,
              switchable: placing.takesSwitchable,
            },
            microA: microA(placing.currentA),
            cost: placing.cost / costUnit,
            value: placing.value / valueUnit,
            wires: placing.wiresMoved,
          }),
        ),
      };
    });
    return { patterns, places: (module?.places ?? []).filter((place) => !isAlways(place)) };
  });
  return {
    chain: {
      homes: problem.circuits.map((circuit) => seat.get(circuit.home) ?? 0),
      modules,
      parts: problem.parts.map(({ inStock, price }) => ({ inStock, price: price / costUnit })),
      places: problem.places.map((place, k) => (isAlways(k) ? 0 : place.cost / costUnit)),
    },
    alwaysPaid: problem.places.reduce((sum, place, k) => (isAlways(k) ? sum + place.cost : sum), 0),
    choiceOf(point) {
      const patterns = problem.modules.map(() => 0);
      const placings = problem.circuits.map(() => 0);
      point.columns.forEach((column, at) => {
        patterns[row[at] ?? -1] = column.pattern;
        for (const option of column.options) {
          const from = sources[at]?.[column.pattern]?.[option];
          if (from !== undefined) placings[from.circuit] = from.placing;
        }
      });
      return { patterns, placings };
    },
  };
}
