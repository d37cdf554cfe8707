import type { Milp, MilpRequest } from "../milp/index.js";
import { decoded, encoded, type MilpLayout, type Objective, requestOf } from "./milp-request.js";
import { Draft, linkRows, moduleRows, NO_END, partRows, placeRows, type Term } from "./milp-rows.js";
import type { Choice, MovesProblem } from "./problem.js";

export interface MilpForm {
  readonly milp: Milp;
  readonly layout: MilpLayout;
  /** The choice that these column values stand for. Throws where a module or a circuit has none: those are no answer of this model. */
  decode(values: readonly number[]): Choice;
  /** Values for a known choice, to begin from. */
  encode(choice: Choice): number[];
  /** Costs and row bounds that make the opened model look for this objective instead. */
  request(objective: Objective): Required<Pick<MilpRequest, "costs" | "rowBounds">>;
}

/**
 * The problem as a mixed whole-number model: one yes/no for each pattern of a module and each placing of a circuit, one for each place opened, a count for
 * each part bought. Money is counted in the problem's `costUnit` and value in its `valueUnit`, so every coefficient of an objective is whole.
 * Rows `cost`, `value` and `wires` hold the three sums and are open, so that one opened model answers every objective (`request`).
 */
export function milpOf(problem: MovesProblem, objective: Objective = { best: "least-cost" }): MilpForm {
  const draft = new Draft();
  const pattern = problem.modules.map(({ module, patterns }) =>
    patterns.map((each) => draft.binary(`do ${module} ${each.key}`, `module ${module}`)),
  );
  const placing = problem.circuits.map((circuit) =>
    circuit.placings.map((each, j) => {
      const where = each.module === undefined ? "off" : problem.modules[each.module]?.module;
      return draft.binary(
        `sit ${circuit.circuit} ${where} ${each.isDimmed ? "dim" : "on"} ${j}`,
        `circuit ${circuit.circuit}`,
      );
    }),
  );
  const opened = problem.places.map((place) =>
    draft.binary(`open ${place.place ?? "isolation"}`, `place ${place.place ?? "isolation"}`),
  );
  const bought = problem.parts.map((part, k) => {
    const most = problem.modules.filter(({ patterns }) => patterns.some((each) => each.part === k)).length;
    return draft.binary(`buy ${part.kind}`, `stock ${part.kind}`, part.price === NO_END ? 0 : most);
  });
  const amounts = (of: {
    pattern(m: number, p: number): number;
    placing(c: number, j: number): number;
    place(k: number): number;
    part(k: number): number;
  }): Term[] => [
    ...pattern.flatMap((columns, m) => columns.map((column, p): Term => [column, of.pattern(m, p)])),
    ...placing.flatMap((columns, c) => columns.map((column, j): Term => [column, of.placing(c, j)])),
    ...opened.map((column, k): Term => [column, of.place(k)]),
    ...bought.map((column, k): Term => [column, of.part(k)]),
  ];
  const costTerms = amounts({
    pattern: (m, p) => (problem.modules[m]?.patterns[p]?.cost ?? 0) / problem.costUnit,
    placing: (c, j) => (problem.circuits[c]?.placings[j]?.cost ?? 0) / problem.costUnit,
    place: (k) => (problem.places[k]?.cost ?? 0) / problem.costUnit,
    part: (k) => (problem.parts[k]?.price === NO_END ? 0 : (problem.parts[k]?.price ?? 0) / problem.costUnit),
  });
  const none = () => 0;
  const valueTerms = amounts({
    pattern: (m, p) => (problem.modules[m]?.patterns[p]?.value ?? 0) / problem.valueUnit,
    placing: (c, j) => (problem.circuits[c]?.placings[j]?.value ?? 0) / problem.valueUnit,
    place: none,
    part: none,
  });
  const wireTerms = amounts({
    pattern: none,
    placing: (c, j) => problem.circuits[c]?.placings[j]?.wiresMoved ?? 0,
    place: none,
    part: none,
  });
  const rows = {
    cost: draft.row("cost", "cost", -NO_END, NO_END, costTerms),
    value: draft.row("value", "value", -NO_END, NO_END, valueTerms),
    wires: draft.row("wires", "wires", -NO_END, NO_END, wireTerms),
  };
  linkRows(draft, problem, pattern, placing);
  moduleRows(draft, problem, pattern, placing);
  placeRows(draft, problem, pattern, placing, opened);
  partRows(draft, problem, pattern, bought);
  if (problem.mostCost !== undefined)
    draft.row("budget", "budget", -NO_END, Math.floor(problem.mostCost / problem.costUnit), costTerms);
  if (problem.mostMinutes !== undefined)
    draft.row(
      "minutes",
      "minutes",
      -NO_END,
      problem.mostMinutes,
      amounts({
        pattern: (m, p) => problem.modules[m]?.patterns[p]?.minutes ?? 0,
        placing: (c, j) => problem.circuits[c]?.placings[j]?.minutes ?? 0,
        place: (k) => problem.places[k]?.minutes ?? 0,
        part: none,
      }),
    );
  const layout: MilpLayout = { pattern, placing, opened, bought, rows };
  const terms = { cost: costTerms, value: valueTerms, wires: wireTerms };
  const request = (asked: Objective) => requestOf(problem, draft.columns.length, rows, terms, asked);
  const own = request(objective);
  const milp: Milp = {
    name: problem.name,
    columns: draft.columns.map((column, at) => ({ ...column, cost: own.costs[at] ?? 0 })),
    rows: draft.rows.map((row, at) => {
      const bound = own.rowBounds.find((each) => each.at === at);
      return bound === undefined ? row : { ...row, lower: bound.lower, upper: bound.upper };
    }),
  };
  return {
    milp,
    layout,
    request,
    decode: (values) => decoded(problem, layout, values),
    encode: (choice) => encoded(problem, layout, draft.columns.length, choice),
  };
}
