import { checkRecord } from "@fusebook/core/findings";
import { applyPlan, demandOf, milpOf, movesProblemOf, planOfChoice, scoreOf } from "@fusebook/core/plan";
import { type CoachRecord, indexRecord, policyOf } from "@fusebook/core/record";
import { highsSolver } from "@fusebook/solver";
import { afterAll, describe, expect, it } from "vitest";
import { MOVE_FAMILIES, tinyMoves } from "./plan-tiny-coach-moves.js";

/**
 * The record that a plan leaves, looked at as if somebody had surveyed it: every circuit on one channel, every channel accounted for, every load fed once, and
 * the wishes met that the plan promised, read back from kinds, switch positions and channels alone.
 */
const COACHES = 12;
const solver = highsSolver();
afterAll(() => solver.close());

const channelsOf = (record: CoachRecord): string[] =>
  (record.circuits ?? []).flatMap((circuit) =>
    circuit.module === undefined ? [] : [`${circuit.module} ${circuit.channel}`],
  );
const twice = (all: readonly string[]): string[] => all.filter((each, i) => all.indexOf(each) !== i);
const fedLoads = (record: CoachRecord): string[] =>
  (record.circuits ?? []).flatMap((circuit) => circuit.loads ?? []).sort();

describe("the record after a plan with moves", () => {
  for (const family of MOVE_FAMILIES)
    it(`has nothing lost, nothing twice, and gives what was promised: ${family}`, async () => {
      let moved = 0;
      let readBack = 0;
      for (let seed = 1; seed <= COACHES; seed++) {
        const { record, job } = tinyMoves(seed, family);
        const index = indexRecord(record);
        const problem = movesProblemOf(index, policyOf(record), demandOf(index, job));
        const form = milpOf(problem, { best: "most-value" });
        const session = await solver.open(form.milp);
        const answer = await session.solve();
        session.close();
        if (answer.values === undefined) continue;
        const choice = form.decode(answer.values);
        const plan = planOfChoice(problem, choice);
        const score = scoreOf(problem, choice);
        const at = `${family}, seed ${seed}`;
        expect([plan.costCents, plan.minutes, plan.wiresMoved], at).toEqual([
          score.costCents,
          score.minutes,
          score.wiresMoved,
        ]);
        const after = applyPlan(record, plan);
        moved += plan.wiresMoved;
        expect(twice(channelsOf(after)), at).toEqual(twice(channelsOf(record)));
        // A channel that the record listed is still listed: nothing on it is said, not left unsaid.
        expect(channelsOf(after), at).toEqual(expect.arrayContaining(channelsOf(record)));
        expect(fedLoads(after), at).toEqual(fedLoads(record));
        const afterIndex = indexRecord(after);
        expect(new Set((after.circuits ?? []).map((circuit) => circuit.id)).size).toBe(after.circuits?.length);
        for (const move of plan.moves)
          expect(afterIndex.circuits.get(move.circuit), at).toMatchObject({
            module: move.to.module,
            channel: move.to.channel,
          });
        const codes = (of: CoachRecord): string[] =>
          checkRecord(indexRecord(of), { atLeast: "mend" })
            .filter((finding) =>
              [
                "channel-claimed-twice",
                "channel-out-of-range",
                "load-claimed-twice",
                "duplicate-id",
                "dangling-reference",
              ].includes(finding.code),
            )
            .map((finding) => `${finding.code} ${finding.subject.id}`);
        expect(
          codes(after).filter((each) => !codes(record).includes(each)),
          at,
        ).toEqual([]);
        // Where all switches can be set, a survey of the coach as it then is meets the same wishes.
        if (plan.modules.some((each) => each.isTouched && each.positions === undefined)) continue;
        readBack++;
        const now = movesProblemOf(afterIndex, policyOf(after), demandOf(afterIndex, { ...job, constraints: {} }));
        const dims = [
          ...now.modules.flatMap((module) => module.patterns.find((pattern) => !pattern.isTouched)?.dims ?? []),
          ...now.circuits.flatMap((circuit) => {
            const found = now.modules[circuit.home]?.patterns.findIndex((pattern) => !pattern.isTouched) ?? -1;
            return circuit.placings.find((each) => each.wiresMoved === 0 && each.patterns.includes(found))?.dims ?? [];
          }),
        ];
        expect([...dims].sort(), at).toEqual([...plan.dims].sort());
      }
      expect(readBack, family).toBeGreaterThan(0);
      if (["within", "neighbour", "steady"].includes(family)) expect(moved, family).toBeGreaterThan(0);
    });
});
