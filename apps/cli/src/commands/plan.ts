import { applyPlan, type Front, frontOf, obstacleWords, type Plan } from "@fusebook/core/plan";
import { type CoachRecord, indexRecord, type Job, policyOf, writeRecord } from "@fusebook/core/record";
import { columns, jsonText, wrap } from "../columns.js";
import { type Command, EXIT, flag, text, type Values } from "../command.js";
import { Misuse } from "../misuse.js";
import { money } from "../money.js";
import { loadRecord } from "../records.js";

export const PICK_NAMES = ["least-for-all-musts", "most-light", "least-disturbance", "best-per-money"] as const;

/** The job a command works on: by id, else the record's first. */
export function jobOf(record: CoachRecord, id: string | undefined): Job | undefined {
  if (id === undefined) return record.jobs?.[0];
  const job = record.jobs?.find((each) => each.id === id);
  if (job === undefined)
    throw new Misuse(
      `--job ${id}: the record has no such job; it has ${record.jobs?.map((each) => each.id).join(", ") || "none"}`,
    );
  return job;
}

/** The plan meant by a pick's name or a plan's id. */
export function planMeant(front: Front, meant: string): Plan {
  const id = front.picks.find((pick) => pick.name === meant)?.plan ?? meant;
  const plan = front.plans.find((each) => each.id === id);
  if (plan === undefined)
    throw new Misuse(
      `--pick ${meant}: wanted ${front.picks.map((pick) => pick.name).join(", ") || "a plan"} or the id of a plan on the front`,
    );
  return plan;
}

function withBudget(job: Job | undefined, values: Values): Job | undefined {
  const given = text(values, "budget");
  if (given === undefined) return job;
  const budget = Number(given);
  if (!Number.isFinite(budget) || budget < 0)
    throw new Misuse(`--budget ${given}: wanted an amount of money, 0 or more`);
  const base = job ?? ({ id: "asked", title: "asked on the line" } as Job);
  return { ...base, constraints: { ...base.constraints, budget } };
}

/** Which modules to replace with what, every bank option, every fuse, and why not more. */
export const plan: Command = {
  name: "plan",
  usage: "RECORD [--pick PLAN -o OUT]",
  about:
    "Lists the plans none of which is beaten on cost, lights dimmed and modules touched at once, cheapest first, and says which rule stops each wish that stays unmet. With --pick the plan is written into the record's job.",
  examples: [
    ["fusebook plan coach.fusebook.json", "the whole front, with the named picks"],
    ["fusebook plan coach.fusebook.json --budget 900", "what can be had for that"],
    [
      "fusebook plan coach.fusebook.json --pick most-light -o planned.fusebook.json",
      "choose one; the record after the work is written with --after",
    ],
  ],
  options: {
    job: { type: "string" },
    pick: { type: "string" },
    budget: { type: "string" },
    output: { type: "string", short: "o" },
    after: { type: "boolean" },
    replace: { type: "boolean" },
  },
  optionHelp: {
    job: "the job whose wishes count; the first where absent",
    pick: `${PICK_NAMES.join(", ")}, or the id of a plan`,
    budget: "most it may cost, tax not counted",
    output: "where to write the record with the plan chosen",
    after: "write the record as it will be when the work is done",
    replace: "write over a file that is there",
  },
  minPositionals: 1,
  maxPositionals: 1,
  async run({ values, positionals, io }) {
    const record = await loadRecord(io, positionals[0] as string);
    const index = indexRecord(record);
    const job = withBudget(jobOf(record, text(values, "job")), values);
    const front = frontOf(index, job);
    const currency = policyOf(record).currency;
    const meant = text(values, "pick");
    const chosen = meant === undefined ? undefined : planMeant(front, meant);
    for (const fault of front.faults) io.err(`${fault.message} [${fault.code}]`);
    if (flag(values, "json"))
      io.out(
        jsonText(
          chosen === undefined
            ? { record: record.id, currency, ...front }
            : { record: record.id, currency, plan: chosen },
        ),
      );
    else {
      const names = (id: string): string =>
        front.picks
          .filter((pick) => pick.plan === id)
          .map((pick) => pick.name)
          .join(", ");
      const rows = front.plans.map((each) => [
        each.id,
        money(each.costCents, currency),
        String(each.dims.length),
        String(each.modulesTouched),
        `${each.minutes} min`,
        String(each.mustsLeft),
        names(each.id),
      ]);
      io.out(
        columns(
          [["plan", "cost", "lights", "modules", "time", "musts left", "pick"], ...rows],
          io.columns,
          [1, 2, 3, 4, 5],
        ),
      );
      const told = chosen ?? front.plans.find((each) => each.id === front.picks[0]?.plan);
      if (told !== undefined) {
        io.out(
          `\n${told.id}: ${money(told.costCents, currency)}, parts ${money(told.partsCents, currency)} and labour ${money(told.labourCents, currency)}`,
        );
        for (const choice of told.modules.filter((each) => each.isTouched))
          io.out(
            `  ${index.modules.get(choice.module)?.name ?? choice.module}: ${choice.isReplaced ? `${choice.from ?? "?"} out, ${choice.to} in` : `keep ${choice.to}`}; switches ${choice.positions ?? `not known (needs ${choice.positionsNeed.join(", ")})`}; dims ${choice.enables.join(", ") || "nothing"}`,
          );
        for (const change of told.fuses)
          io.out(
            `  fuse of ${index.circuits.get(change.circuit)?.name ?? change.circuit}: ${change.fromA ?? "?"} A out, ${change.toA} A in`,
          );
        if (told.unmet.length > 0) io.out("\nWhy not more");
        for (const wish of told.unmet)
          for (const line of wrap(
            `${index.loads.get(wish.load)?.name ?? wish.load}: ${[...new Set(wish.stoppedBy.map((obstacle) => obstacleWords(obstacle, index)))].join("; ")}`,
            Math.min(io.columns, 110) - 2,
          ))
            io.out(`  ${line}`);
      }
      if (front.cuts.length > 0)
        io.out(
          `\n${front.cuts.length} choices were taken out, because the coach would have been less safe after them.`,
        );
    }
    const output = text(values, "output");
    if (output !== undefined) {
      if (chosen === undefined) throw new Misuse("say which plan to write: --pick NAME");
      await io.write(
        output,
        writeRecord(recordWith(record, job, chosen, flag(values, "after"))),
        flag(values, "replace"),
      );
    }
    return front.faults.length > 0 ? EXIT.findings : EXIT.fine;
  },
};

/** The record with the plan written into the job; with `isAfter` changed as the work will change it. */
export function recordWith(record: CoachRecord, job: Job | undefined, chosen: Plan, isAfter: boolean): CoachRecord {
  const base = job ?? ({ id: "job-1", title: "Plan" } as Job);
  const { currency } = policyOf(record);
  const done: Job = {
    ...base,
    chosen: {
      modules: chosen.modules
        .filter((each) => each.isTouched)
        .map((each) => ({
          module: each.module,
          kind: each.to,
          enables: [...each.enables],
          ...(each.positions === undefined ? {} : { positions: each.positions }),
        })),
      fuses: chosen.fuses.map((change) => ({ circuit: change.circuit, ratedA: change.toA })),
      cost: chosen.costCents / 100,
      currency,
      minutes: chosen.minutes,
    },
  };
  const jobs = record.jobs ?? [];
  const withJob = {
    ...record,
    jobs: jobs.some((each) => each.id === done.id)
      ? jobs.map((each) => (each.id === done.id ? done : each))
      : [...jobs, done],
  };
  return isAfter ? applyPlan(withJob, chosen) : withJob;
}
