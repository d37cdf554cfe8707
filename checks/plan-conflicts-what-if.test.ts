import { openWhatIf, type Trial } from "@fusebook/core/plan";
import { indexRecord, type Job } from "@fusebook/core/record";
import { chanceOf } from "@fusebook/fixtures";
import { highsSolver } from "@fusebook/solver";
import { afterAll, describe, expect, it } from "vitest";
import { Lister } from "./plan-moves-every-plan.js";
import { MOVE_FAMILIES, tinyMoves } from "./plan-tiny-coach-moves.js";

/** Trials on one open model against listing every plan of the record with the trial written into its job. */

const solver = highsSolver();
afterAll(() => solver.close());

type Limits = NonNullable<Job["constraints"]>;
const joined = <Item>(a: readonly Item[] | undefined, b: readonly Item[] | undefined): Item[] => [
  ...(a ?? []),
  ...(b ?? []),
];

function withTrial(job: Job, trial: Trial): Job {
  const own: Limits = job.constraints ?? {};
  const least = (a: number | undefined, b: number | undefined): number | undefined =>
    a === undefined ? b : b === undefined ? a : Math.min(a, b);
  const budget = least(own.budget, trial.budget);
  const maxMinutes = least(own.maxMinutes, trial.maxMinutes);
  return {
    ...job,
    constraints: {
      ...own,
      lockedModules: joined(own.lockedModules, trial.lockedModules),
      lockedCircuits: joined(own.lockedCircuits, trial.lockedCircuits),
      lockedLoads: joined(own.lockedLoads, trial.lockedLoads),
      forbiddenKinds: joined(own.forbiddenKinds, trial.forbiddenKinds),
      rulesOut: joined(own.rulesOut, trial.rulesOut),
      fixedChoices: joined(own.fixedChoices, trial.fixedChoices),
      ...(budget === undefined ? {} : { budget }),
      ...(maxMinutes === undefined ? {} : { maxMinutes }),
    },
  };
}

describe("what if", () => {
  it("finds the most wish value and of that the least cost, trial after trial, as listing all plans does", async () => {
    const tally = { trials: 0, changed: 0, none: 0 };
    for (const family of MOVE_FAMILIES)
      for (let seed = 21; seed <= 23; seed++) {
        const { record, job } = tinyMoves(seed, family);
        const index = indexRecord({ ...record, jobs: [job] });
        const chance = chanceOf(seed);
        const whatIf = await openWhatIf(index, job, solver);
        // A dead module is never left: to lock one is another question than the open model's.
        const alive = (record.modules ?? []).filter((module) => module.isDead !== true);
        const circuits = (record.circuits ?? []).filter(
          (circuit) => circuit.module !== undefined && circuit.isSpare !== true,
        );
        const kinds = (record.moduleKinds ?? []).map((kind) => kind.id);
        const free = await whatIf.ask({ trial: {} });
        const trials: Trial[] = [
          {},
          ...(alive.length > 0 ? [{ lockedModules: [chance.pick(alive).id] }] : []),
          { lockedCircuits: [chance.pick(circuits).id] },
          { lockedLoads: [chance.pick(circuits).loads![0]!] },
          { forbiddenKinds: [chance.pick(kinds)] },
          { rulesOut: [chance.pick(["moves", "steady-feeds", "rewires"] as const)] },
          { budget: Math.floor((free.score?.costCents ?? 0) / 200) },
          { maxMinutes: Math.floor((free.score?.minutes ?? 0) / 2) },
          ...(alive.length > 0
            ? [{ fixedChoices: [{ module: chance.pick(alive).id, kind: chance.pick(kinds), isForbidden: true }] }]
            : []),
        ];
        for (const trial of trials) {
          const answer = await whatIf.ask({ trial });
          const what = `${family} ${seed} ${JSON.stringify(trial)}`;
          expect(answer.faults, what).toEqual([]);
          const points = new Lister(record, withTrial(job, trial)).every(false).front.kept;
          const best = [...points].sort((a, b) => b[1] - a[1] || a[0] - b[0])[0];
          // A choice that nothing can meet, or that a lock contradicts, is left out of a job and told; a trial of such a thing has no answer.
          if (
            answer.status === "infeasible" &&
            (best === undefined || joined(job.constraints?.fixedChoices, trial.fixedChoices).length > 0)
          ) {
            tally.none++;
            continue;
          }
          tally.trials++;
          expect(
            [answer.score?.costCents, answer.score === undefined ? undefined : answer.score.value / 1000],
            what,
          ).toEqual([best?.[0], best?.[1]]);
          if (answer.score?.value !== free.score?.value || answer.score?.cost !== free.score?.cost) tally.changed++;
        }
        whatIf.close();
      }
    expect(tally.trials).toBeGreaterThan(120);
    expect(tally.changed).toBeGreaterThan(30);
  }, 300_000);

  it("names what a trial gets wrong, and leaves it out", async () => {
    const { record, job } = tinyMoves(1, "within");
    const whatIf = await openWhatIf(indexRecord({ ...record, jobs: [job] }), job, solver);
    const plain = await whatIf.ask({ trial: {} });
    const wrong = await whatIf.ask({ trial: { lockedModules: ["nowhere" as never], budget: -1 } });
    expect(wrong.faults.map((fault) => fault.code)).toEqual(
      expect.arrayContaining(["unknown-module", "budget-not-valid"]),
    );
    expect(wrong.score).toEqual(plain.score);
    whatIf.close();
  }, 300_000);
});
