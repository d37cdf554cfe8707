import { known, type Outcome, refused } from "../../quantity/index.js";
import type { CoachIndex } from "../../record/index.js";
import { buildCoach, nominalVOf } from "../build-coach.js";
import { solutionOf } from "../solve-coach.js";
import { NetworkSolver } from "../solver.js";
import type { CoachState } from "../state.js";
import { fillLoads } from "./fill-loads.js";
import { drawnValue, InputBank } from "./input-bank.js";
import { NetworkDraw } from "./network-draw.js";
import type { CoachSamples, SampledInput, SampleOptions } from "./samples.js";
import { Sheets } from "./sheets.js";

/** More than this cannot be kept. */
const MOST_SAMPLES = 1_000_000;
/** The balance that a sample is brought to: a tenth of what every solve must keep. */
const AIMED_RELATIVE = 1e-10;

/**
 * What would coaches that fit this record measure? Draws `samples` of them, each figure evenly from its span (those of one reel, one supply or one kind of
 * module together), and solves every one. The same seed gives the same coaches: sample s is the coach that `drawRecord` writes for it. Missing and refused
 * as `solveCoach`; refused with `samples-not-a-count` where `samples` is no whole number from 1 to a million.
 */
export function sampleCoach(index: CoachIndex, state: CoachState, options: SampleOptions): Outcome<CoachSamples> {
  const { seed, samples, keepInputs } = options;
  if (!Number.isInteger(samples) || samples < 1 || samples > MOST_SAMPLES)
    return refused(
      "samples-not-a-count",
      `samples: a whole number from 1 to ${MOST_SAMPLES} is wanted, got ${samples}`,
    );
  const built = buildCoach(index, state);
  if (built.kind !== "known") return built;
  const nominal = solutionOf(built.value);
  if (nominal.kind !== "known") return nominal;
  const full = fillLoads(index, nominalVOf(index));
  const filled = full.index === index ? built : buildCoach(full.index, state);
  if (filled.kind !== "known") return filled;
  const coach = filled.value;
  const solver = new NetworkSolver(coach.network);
  const bank = new InputBank(seed);
  const draw = new NetworkDraw(coach, bank, solver);
  bank.close();
  const sheets = new Sheets(coach, nominal.value, samples);
  const sampleNumbers = new Uint32Array(samples);
  const isWarm = solver.run() === "solved";
  solver.aimedRelative = AIMED_RELATIVE;
  const startV = solver.nodeV.slice();
  let solved = 0;
  for (let sample = 0; sample < samples; sample++) {
    bank.draw(sample);
    draw.put();
    solver.nodeV.set(startV);
    if (solver.run(isWarm) !== "solved") continue;
    sheets.write(solved, solver);
    sampleNumbers[solved] = sample;
    solved++;
  }
  const numbers = sampleNumbers.subarray(0, solved);
  const keep = typeof keepInputs === "function" ? keepInputs : keepInputs === true ? () => true : undefined;
  const inputs: SampledInput[] | undefined =
    keep &&
    bank.inputs
      .filter((input) => input.span.hi > input.span.lo && keep(input))
      .map((input) => ({ input, values: Float64Array.from(numbers, (sample) => drawnValue(input, seed, sample)) }));
  return known({
    state,
    nominal: nominal.value,
    seed,
    samples,
    solved,
    unsolved: samples - solved,
    sampleNumbers: numbers,
    ...sheets.read(solved),
    ...(inputs === undefined ? {} : { inputs }),
  });
}
