import type { CircuitId, CoachIndex } from "../../record/index.js";
import { buildCoach, nominalVOf } from "../build-coach.js";
import type { CoachNetwork } from "../coach-network.js";
import { NetworkSolver } from "../solver.js";
import { fillLoads } from "./fill-loads.js";
import { InputBank } from "./input-bank.js";
import { NetworkDraw } from "./network-draw.js";
import type { UncertainInput } from "./uncertain-input.js";

/** Every figure that the network of this coach hangs on, doubtful or not, in the order of the record's network. */
export function figuresOf(coach: CoachNetwork): readonly UncertainInput[] {
  const bank = new InputBank(0);
  new NetworkDraw(coach, bank, new NetworkSolver(coach.network));
  return bank.inputs;
}

/** The coach with all circuits on, charger and engine too. */
export function wholeCoach(index: CoachIndex): CoachNetwork | undefined {
  const on = new Set([...index.circuits.keys()] as CircuitId[]);
  const built = buildCoach(index, { name: "everything there is", on, chargerOn: true, engineOn: true });
  return built.kind === "known" ? built.value : undefined;
}

/**
 * Which figures of this coach are in doubt, and between what? The same that `spanCoach` spans and `sampleCoach` draws, in any state: what the record states,
 * what a class figure stands in for, and a current for each load that has none. None where no supply is on record.
 */
export function uncertainInputs(index: CoachIndex): readonly UncertainInput[] {
  const coach = wholeCoach(fillLoads(index, nominalVOf(index)).index);
  if (coach === undefined) return [];
  return figuresOf(coach).filter((input) => input.span.hi > input.span.lo);
}
