import type { MilpSolver, StopSignal } from "../milp/index.js";
import { type Choice, choiceFaults, type MovesProblem, milpOf, type Score, scoreOf } from "../moves/index.js";
import { chainFront } from "./chain-front.js";
import { chainOfProblem, notAChain } from "./chain-of-problem.js";
import type { ChainPoint } from "./chain-problem.js";
import { addUnbeaten, type Measures } from "./corners.js";
import { type CornerSolver, solveCorner } from "./milp-corner.js";
import { OpenFront } from "./open-front.js";

/** One point of a front: a choice, with what it costs, gives and disturbs. */
export interface FrontPoint extends Measures {
  readonly choice: Choice;
  readonly score: Score;
}

export interface FrontProgress {
  /** Unbeaten so far, cheapest first; the last report has the front itself. */
  readonly points: readonly FrontPoint[];
  /** Parts of the field in which more may lie; 0 at the end. */
  readonly open: number;
  /** True: the cheapest and the worthiest of all are among them. */
  readonly areEndsKnown: boolean;
}

export interface ProblemFrontOptions {
  readonly solver?: MilpSolver | undefined;
  readonly onProgress?: ((progress: FrontProgress) => void) | undefined;
  readonly signal?: StopSignal | undefined;
  /** Awaited between turns, so that a stop can be heard and a screen drawn. */
  readonly breathe?: (() => Promise<void>) | undefined;
  /** `solver`: every point by the solver, also where the modules stand in a row: a second opinion. */
  readonly way?: "row" | "solver" | undefined;
  /** Steps spent on one corner of a row before the solver is asked. */
  readonly effort?: number;
}

export interface ProblemFront {
  readonly points: readonly FrontPoint[];
  /** True: proved that nothing is missing. */
  readonly isComplete: boolean;
  /** `chain`: by the row of modules alone; `chain-and-solver`: with the solver's help on single corners; `solver`: the problem is no row (`because`). */
  readonly by: "chain" | "chain-and-solver" | "solver";
  readonly because: ReturnType<typeof notAChain>;
  readonly solves: number;
}

const pointOf = (problem: MovesProblem, choice: Choice): FrontPoint => {
  const score = scoreOf(problem, choice);
  return { choice, score, cost: score.cost, value: score.value, wires: score.wiresMoved };
};

const inOrder = (points: readonly FrontPoint[]): FrontPoint[] =>
  [...points].sort((a, b) => a.cost - b.cost || b.value - a.value || a.wires - b.wires);

const within = (problem: MovesProblem) => ({
  // A corner asks for one unit less than it gets, so the first cost beyond the budget is a whole number of them.
  cost:
    problem.mostCost === undefined
      ? Number.POSITIVE_INFINITY
      : (Math.floor(problem.mostCost / problem.costUnit) + 1) * problem.costUnit,
  value: Number.NEGATIVE_INFINITY,
  wires: Number.POSITIVE_INFINITY,
});

/** The coach as it is, where it may stay so: it alone does not pay what is always paid, which the search leaves out. */
function untouched(problem: MovesProblem): FrontPoint[] {
  const choice = { patterns: problem.modules.map(() => 0), placings: problem.circuits.map(() => 0) };
  return choiceFaults(problem, choice).length === 0 ? [pointOf(problem, choice)] : [];
}

/** A session opened when first asked for. */
function lateSolver(problem: MovesProblem, options: ProblemFrontOptions) {
  let opened: Promise<CornerSolver> | undefined;
  let solves = 0;
  return {
    solves: () => solves,
    async ask(corner: Measures) {
      const { solver } = options;
      if (solver === undefined) return "stopped" as const;
      if (opened === undefined) {
        const form = milpOf(problem);
        opened = solver.open(form.milp).then((session) => ({ problem, form, session, signal: options.signal }));
      }
      solves++;
      return solveCorner(await opened, corner);
    },
    async close() {
      if (opened !== undefined) (await opened).session.close();
    },
  };
}

type Late = ReturnType<typeof lateSolver>;

async function byChain(problem: MovesProblem, options: ProblemFrontOptions, late: Late): Promise<ProblemFront> {
  const { costUnit, valueUnit } = problem;
  const form = chainOfProblem(problem);
  const turned = new Map<ChainPoint, FrontPoint>();
  const real = (points: readonly ChainPoint[]): FrontPoint[] => {
    let kept: FrontPoint[] = [];
    for (const point of points) {
      let made = turned.get(point);
      if (made === undefined) {
        made = pointOf(problem, form.choiceOf(point));
        turned.set(point, made);
      }
      if (problem.mostCost === undefined || made.cost <= problem.mostCost) kept = addUnbeaten(kept, made) ?? kept;
    }
    return inOrder(kept);
  };
  const search = chainFront(form.chain, {
    mostCost: problem.mostCost === undefined ? undefined : problem.mostCost / costUnit,
    ...(options.effort === undefined ? {} : { effort: options.effort }),
  });
  const extra: FrontPoint[] = untouched(problem);
  let points: FrontPoint[] = [];
  let settled: { point: ChainPoint | undefined } | "left-open" | undefined;
  for (;;) {
    const { value: turn, done } = search.next(settled);
    settled = undefined;
    const chainPoints = turn.points.filter((point) => point.columns.length > 0);
    points = extra.reduce<FrontPoint[]>((kept, point) => inOrder(addUnbeaten(kept, point) ?? kept), real(chainPoints));
    options.onProgress?.({ points, open: turn.corners.length, areEndsKnown: turn.areEndsKnown });
    const isStopped = options.signal?.aborted === true;
    if (done === true || isStopped)
      return {
        points,
        isComplete: done === true && turn.corners.length === 0,
        by: late.solves() > 0 ? "chain-and-solver" : "chain",
        because: undefined,
        solves: late.solves(),
      };
    if (turn.stuckAt !== undefined) {
      // The corner's cost leaves out what all but the untouched coach pay.
      const { cost, value, wires } = turn.stuckAt;
      const corner = { cost: cost * costUnit + form.alwaysPaid, value: value * valueUnit, wires };
      const answer = await late.ask(corner);
      if (answer === "stopped") settled = "left-open";
      else if (answer.choice === undefined) settled = { point: undefined };
      else {
        const found = pointOf(problem, answer.choice);
        extra.push(found);
        settled = {
          point: {
            cost: (found.cost - form.alwaysPaid) / costUnit,
            value: found.value / valueUnit,
            wires: found.wires,
            columns: [],
          },
        };
      }
    }
    await options.breathe?.();
  }
}

async function bySolver(
  problem: MovesProblem,
  options: ProblemFrontOptions,
  late: Late,
  because: ReturnType<typeof notAChain>,
): Promise<ProblemFront> {
  const front = new OpenFront<FrontPoint>(
    { cost: problem.costUnit, value: problem.valueUnit, wires: 1 },
    within(problem),
  );
  let isComplete = true;
  while (front.corners.length > 0 && options.signal?.aborted !== true) {
    const dearest = front.corners.reduce((a, b) => (b.cost > a.cost ? b : a));
    const answer = await late.ask(dearest);
    if (answer === "stopped") {
      isComplete = false;
      break;
    }
    if (answer.choice === undefined) front.close(dearest);
    else front.add([pointOf(problem, answer.choice)]);
    options.onProgress?.({
      points: inOrder(front.points),
      open: front.corners.length,
      areEndsKnown: !front.corners.some(
        (each) => each.cost >= within(problem).cost && each.wires === Number.POSITIVE_INFINITY,
      ),
    });
    await options.breathe?.();
  }
  return {
    points: inOrder(front.points),
    isComplete: isComplete && front.corners.length === 0,
    by: "solver",
    because,
    solves: late.solves(),
  };
}

/**
 * Which choices of the problem does no other beat on cost, wish value and wires moved at once? Exact: proved that none is missing where `isComplete`. A row of modules goes without
 * a solver; where stock, minutes, feeders or reach join modules in another way, each point is found and each gap closed by the solver. Stopped, it gives the points
 * found so far.
 */
export async function frontOfProblem(problem: MovesProblem, options: ProblemFrontOptions = {}): Promise<ProblemFront> {
  const late = lateSolver(problem, options);
  const because = notAChain(problem);
  try {
    return because === undefined && options.way !== "solver"
      ? await byChain(problem, options, late)
      : await bySolver(problem, options, late, because);
  } finally {
    await late.close();
  }
}
