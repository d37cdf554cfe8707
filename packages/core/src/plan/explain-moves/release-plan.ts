import type { CircuitId, DimBlockId, LoadId, ModuleId, ModuleKindId } from "../../record/index.js";
import { type Choice, type MovesProblem, patternAt, placingAt, scoreOf } from "../moves/index.js";

/** What a plan found in the course of an explanation does, costs and takes: enough to say it in a sentence. */
export interface PlanInShort {
  readonly costCents: number;
  readonly minutes: number;
  readonly wiresMoved: number;
  readonly fits: readonly {
    readonly module: ModuleId;
    readonly kind: ModuleKindId;
    readonly enables: readonly DimBlockId[];
  }[];
  readonly setsAnew: readonly { readonly module: ModuleId; readonly enables: readonly DimBlockId[] }[];
  readonly moves: readonly {
    readonly circuit: CircuitId;
    readonly from: ModuleId;
    readonly to: ModuleId;
    readonly minutes: number;
  }[];
  readonly steadyFeeds: readonly LoadId[];
  readonly rewires: readonly CircuitId[];
}

/** A choice of the problem, told in short. */
export function inShort(problem: MovesProblem, choice: Choice): PlanInShort {
  const score = scoreOf(problem, choice);
  const touched = problem.modules.flatMap((module, m) => {
    const pattern = patternAt(problem, choice, m);
    return pattern?.isTouched === true ? [{ module: module.module, pattern }] : [];
  });
  const placed = problem.circuits.flatMap((circuit, c) => {
    const placing = placingAt(problem, choice, c);
    return placing === undefined ? [] : [{ circuit, placing }];
  });
  return {
    costCents: score.costCents,
    minutes: score.minutes,
    wiresMoved: score.wiresMoved,
    fits: touched.flatMap(({ module, pattern }) =>
      pattern.isReplaced && pattern.kind !== undefined
        ? [{ module, kind: pattern.kind, enables: pattern.enables }]
        : [],
    ),
    setsAnew: touched.flatMap(({ module, pattern }) =>
      pattern.isReplaced ? [] : [{ module, enables: pattern.enables }],
    ),
    moves: placed.flatMap(({ circuit, placing }) => {
      const from = problem.modules[circuit.home]?.module;
      const to = placing.module === undefined ? undefined : problem.modules[placing.module]?.module;
      return placing.isMoved && from !== undefined && to !== undefined
        ? [{ circuit: circuit.circuit, from, to, minutes: placing.minutes }]
        : [];
    }),
    steadyFeeds: placed.flatMap(({ placing }) => placing.steady),
    rewires: placed.flatMap(({ circuit, placing }) => (placing.isRewired ? [circuit.circuit] : [])),
  };
}
