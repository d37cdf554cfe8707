import { type Choice, type MovesProblem, type Score, scoreOf } from "../moves/index.js";
import { chainOfProblem, notAChain } from "./chain-of-problem.js";
import { weigh } from "./chain-problem.js";
import { ANYTHING, OpenFront } from "./open-front.js";
import { prepare } from "./prepared.js";
import { priceBookOf } from "./price-book.js";
import { probe } from "./probe.js";
import { scaleOf } from "./problem-scale.js";

const STEPS = 200;
const EFFORT = 4_000_000;
/** One of the currency in sixtieths of a cent, one weight in thousandths. */
const MONEY = 6000;
const WEIGHT = 1000;

/**
 * The choice with the least of cost less value, one whole weight counting as much as `moneyPerWeight` of the currency. Of a row of modules only (undefined else, and where a limit on cost is
 * set): no solver is needed. `isProved` false: the effort ran out, it is the best found.
 */
export function worthiestForMoney(
  problem: MovesProblem,
  moneyPerWeight: number,
): { readonly choice: Choice; readonly score: Score; readonly isProved: boolean } | undefined {
  if (notAChain(problem) !== undefined || problem.mostCost !== undefined) return undefined;
  const form = chainOfProblem(problem);
  const scale = scaleOf(form.chain);
  const ground = {
    prepared: prepare(form.chain),
    scale,
    book: priceBookOf(form.chain, scale),
    front: new OpenFront<Parameters<typeof form.choiceOf>[0]>(scale.step),
  };
  const perValue = (moneyPerWeight * MONEY * problem.valueUnit) / (WEIGHT * problem.costUnit);
  const weights = { perCost: 1, perValue, perWire: 0 };
  // From nothing up to the full weight, so that each step begins from prices and points that are nearly right.
  let outcome: ReturnType<typeof probe> = "done";
  for (const share of [1e-3, 0.25, 0.5, 0.75, 1])
    outcome = probe(ground, {
      weights: { ...weights, perValue: share * perValue },
      aimed: Number.POSITIVE_INFINITY,
      aim: ANYTHING,
      mostSteps: share < 1 ? STEPS / 3 : STEPS,
      effort: share < 1 ? EFFORT / 20 : EFFORT,
      isWanted: () => false,
    });
  const weighed = ground.front.points.map((point) => {
    const choice = form.choiceOf(point);
    const score = scoreOf(problem, choice);
    return {
      choice,
      score,
      weight: weigh({ cost: score.cost / problem.costUnit, value: score.value / problem.valueUnit, wires: 0 }, weights),
    };
  });
  const best = weighed.reduce<(typeof weighed)[number] | undefined>(
    (low, each) => (low === undefined || each.weight < low.weight ? each : low),
    undefined,
  );
  return best === undefined ? undefined : { choice: best.choice, score: best.score, isProved: outcome === "done" };
}
