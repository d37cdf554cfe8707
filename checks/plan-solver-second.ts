import type { Milp } from "@fusebook/core/plan";
import makeGlpk, { type GLPK, type LP } from "glpk.js/node";

/** A model in the terms of the second solver (GLPK compiled to WebAssembly; GPL-3.0, so for checks alone). */
function lpOf(glpk: GLPK, milp: Milp): LP {
  const ends = (lower: number, upper: number) => {
    if (lower === upper) return { type: glpk.GLP_FX, lb: lower, ub: upper };
    if (lower === -Infinity && upper === Infinity) return { type: glpk.GLP_FR, lb: 0, ub: 0 };
    if (lower === -Infinity) return { type: glpk.GLP_UP, lb: 0, ub: upper };
    if (upper === Infinity) return { type: glpk.GLP_LO, lb: lower, ub: 0 };
    return { type: glpk.GLP_DB, lb: lower, ub: upper };
  };
  const nameOf = (column: number) => milp.columns[column]?.name as string;
  return {
    name: milp.name,
    objective: {
      direction: glpk.GLP_MIN,
      name: "cost",
      // Every column stands here, also at no cost, so that the solver meets them in the model's order.
      vars: milp.columns.map(({ name, cost }) => ({ name, coef: cost })),
    },
    subjectTo: milp.rows.map((row) => ({
      name: row.name,
      vars: row.terms.map(([column, coef]) => ({ name: nameOf(column), coef })),
      bnds: ends(row.lower, row.upper),
    })),
    bounds: milp.columns.map(({ name, lower, upper }) => ({ name, ...ends(lower, upper) })),
    generals: milp.columns.filter((column) => column.isInteger).map((column) => column.name),
  };
}

/** What the second solver says of a model: its least cost, or that there is none; undefined where it ran out of time. */
export async function secondOpinion(): Promise<(milp: Milp, limitS: number) => number | "infeasible" | undefined> {
  const glpk = await makeGlpk();
  return (milp, limitS) => {
    const { result } = glpk.solve(lpOf(glpk, milp), {
      msglev: glpk.GLP_MSG_OFF,
      presol: true,
      mipgap: 0,
      tmlim: limitS,
    });
    if (result.status === glpk.GLP_OPT) return result.z;
    return result.status === glpk.GLP_NOFEAS || result.status === glpk.GLP_INFEAS ? "infeasible" : undefined;
  };
}
