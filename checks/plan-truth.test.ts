import { checkRecord, type Finding } from "@fusebook/core/findings";
import { applyPlan, type Front, type Plan, planFront } from "@fusebook/core/plan";
import { type CoachRecord, indexRecord, type Job, type LoadClass } from "@fusebook/core/record";
import { generateCoach } from "@fusebook/fixtures";
import { highsSolver } from "@fusebook/solver";
import { afterAll, describe, expect, it } from "vitest";
import { NETWORK_CASES } from "./plan-network-cases.js";
import { networkCoach } from "./plan-network-coach.js";

/** Every offered plan is applied to its record and the whole record checked, by all rules: none may make a `stop` or a `mend` that was not there. */

const solver = highsSolver();
afterAll(() => solver.close());

const grave = (finding: Finding): boolean => finding.severity === "stop" || finding.severity === "mend";
/** What stands against the record, with what is certain told from what is open: a plan that turns a doubt into a fault has made a fault. */
const graveOf = (record: CoachRecord): Set<string> =>
  new Set(
    checkRecord(indexRecord(record))
      .filter(grave)
      .flatMap(({ code, subject, severity, verdict }) =>
        (verdict === "fails" ? ["fails", "open"] : ["open"]).map((each) => `${code} ${subject.id} ${severity} ${each}`),
      ),
  );
const known = new WeakMap<CoachRecord, Set<string>>();
const madeBy = (record: CoachRecord, plan: Plan): string[] => {
  const before = known.get(record) ?? graveOf(record);
  known.set(record, before);
  return [...graveOf(applyPlan(record, plan))].filter((each) => !before.has(each));
};
const shape = (plan: Plan) => [plan.costCents, plan.wiresMoved];
const most = (front: Front): number => Math.max(...front.plans.map((plan) => plan.wishValue));

describe("a plan that only the whole network forbids", () => {
  for (const { name, coach, makes, obvious, instead } of NETWORK_CASES)
    it(`is cut, told, and the next best offered: ${name}`, async () => {
      const { record, job } = networkCoach(coach);
      const index = indexRecord(record);
      const unchecked = await planFront(index, job, { solver, check: null });
      const tempting = unchecked.plans.filter((plan) => plan.wishValue === most(unchecked));
      // By the model alone the obvious plan is the cheapest of the most light, and what is to come instead is beaten.
      expect(tempting.map(shape)).toContainEqual(obvious);
      expect(unchecked.plans.map(shape)).not.toContainEqual(instead);
      for (const plan of tempting.filter((each) => each.costCents === obvious[0]))
        expect(madeBy(record, plan).join()).toContain(makes.join(" "));

      const front = await planFront(index, job, { solver });
      expect(front.isComplete).toBe(true);
      expect(front.unchecked).toEqual([]);
      for (const plan of front.plans) expect(madeBy(record, plan), plan.id).toEqual([]);
      expect(most(front)).toBe(most(unchecked));
      expect(front.plans.filter((plan) => plan.wishValue === most(front)).map(shape)).toContainEqual(instead);
      expect(front.cuts.length).toBeGreaterThan(0);
      expect(front.cuts.flatMap((cut) => cut.findings.map(({ code, subject }) => [code, subject]))).toContainEqual([
        ...makes,
      ]);
    });
});

const DIMMABLE: readonly LoadClass[] = ["led-resistor", "led-linear", "filament", "led-driver"];

/** A generated coach with wishes on its lamps, every third circuit movable and the next module in reach. */
function generated(seed: number): { record: CoachRecord; job: Job } {
  const { record } = generateCoach({ seed, circuits: 10 + (seed % 4) * 4 });
  const modules = (record.modules ?? []).map((module) => module.id);
  const circuits = (record.circuits ?? []).map((circuit, i) => {
    const at = circuit.module === undefined ? -1 : modules.indexOf(circuit.module);
    const next = modules[(at + 1) % modules.length];
    if (at < 0 || i % 3 !== 0) return circuit;
    return { ...circuit, canMove: true, ...(next === undefined || next === circuit.module ? {} : { reach: [next] }) };
  });
  const wishes = (record.loads ?? [])
    .filter((load) => load.class !== undefined && DIMMABLE.includes(load.class))
    .map((load, i) => ({ load: load.id, wish: i % 4 === 0 ? "must-dim" : "nice-to-dim", weight: 1 + (i % 3) }));
  return { record: { ...record, circuits } as CoachRecord, job: { id: "j1", title: "dim", wishes } as unknown as Job };
}

describe("plans for generated coaches with circuits that may move", () => {
  it("make no stop and no mend, say what was cut, and are not nothing", async () => {
    let plans = 0;
    let wires = 0;
    let cuts = 0;
    for (let seed = 1; seed <= 8; seed++) {
      const { record, job } = generated(seed);
      const front = await planFront(indexRecord(record), job, { solver, mostChecks: 60 });
      expect(front.plans.length, `seed ${seed}`).toBeGreaterThan(0);
      for (const plan of front.plans)
        if (!front.unchecked.includes(plan.id)) {
          expect(madeBy(record, plan), `seed ${seed} ${plan.id}`).toEqual([]);
          plans++;
          wires += plan.wiresMoved;
        }
      for (const cut of front.cuts) expect(cut.findings.length).toBeGreaterThan(0);
      cuts += front.cuts.length;
    }
    console.log(`generated coaches: ${plans} plans offered and checked, ${wires} wires moved in them, ${cuts} cuts`);
    expect(plans).toBeGreaterThan(20);
    expect(wires).toBeGreaterThan(5);
  }, 300_000);
});
