import { whyNot, whyNotWords } from "@fusebook/core/plan";
import type { CoachIndex, Job, LoadId } from "@fusebook/core/record";
import { jsonText, wrap } from "./columns.js";
import { EXIT, flag, type Values } from "./command.js";
import type { Io } from "./io.js";
import { withSolver } from "./plan-solver.js";

/** What stops one wish, what is in each other's way, and the cheapest way out, in sentences. Gives 1 where no plan as asked meets it. */
export async function explainWish(
  io: Io,
  values: Values,
  index: CoachIndex,
  job: Job | undefined,
  load: LoadId,
): Promise<number> {
  const why = await withSolver(io, (solver, signal) => {
    io.progress("asking what is in the way; Ctrl-C stops");
    return whyNot(index, job, load, solver, { signal });
  });
  const words = whyNotWords(why, index);
  if (flag(values, "json")) io.out(jsonText({ record: index.record.id, ...why, words }));
  else
    for (const said of words) {
      const [first, ...rest] = wrap(said, Math.min(io.columns, 110) - 2);
      io.out([first, ...rest.map((line) => `  ${line}`)].join("\n"));
    }
  return why.outcome.kind === "can-be" || why.outcome.kind === "no-wish" ? EXIT.fine : EXIT.findings;
}
