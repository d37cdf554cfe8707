import { demandOf, frontOfProblem, movesProblemOf } from "@fusebook/core/plan";
import { indexRecord, type Job, policyOf, readRecord } from "@fusebook/core/record";
import { chanceOf } from "@fusebook/fixtures";
import { highsSolver } from "@fusebook/solver";
import { afterAll, describe, expect, it } from "vitest";

/**
 * The row of modules against a general solver on the same seeded coaches: every point found by the ε-constraint method, every gap proved empty by it, is found by prices and
 * joining, and no other. Places that share their opening, a place of the supplies, a bus bar's limit, budgets, dead modules, parts in stock and parts freed and fitted elsewhere are among them.
 */
const solver = highsSolver();
afterAll(() => solver.close());

const CHANNELS = 4;
const SEEDS = 40;

function coach(seed: number) {
  const chance = chanceOf(7000 + seed);
  const modules = chance.whole(2, 4);
  const names = Array.from({ length: modules }, (_, m) => `m${m}`);
  const dollars = (least: number, most: number) => 5 * chance.whole(least / 5, most / 5);
  const kinds = [
    { id: "plain", blocks: [] as number[][], price: dollars(40, 80), ratedTotalA: 40 },
    { id: "whole", blocks: [[1, 2, 3, 4]], price: dollars(90, 140), ratedTotalA: dollars(15, 30) },
    {
      id: "pairs",
      blocks: [
        [1, 2],
        [3, 4],
      ],
      price: dollars(120, 200),
      inStock: chance.whole(0, 2),
      ratedTotalA: dollars(15, 30),
    },
    { id: "singles", blocks: [[1], [2], [3], [4]], price: dollars(200, 320), ratedTotalA: 30 },
  ];
  const loads: object[] = [];
  const circuits: object[] = [];
  names.forEach((module, m) => {
    const reach = [names[m - 1], names[m + 1]].filter((other) => other !== undefined && chance.is(0.85));
    for (let channel = 1; channel <= CHANNELS; channel++) {
      const id = `${module}.${channel}`;
      if (!chance.is(0.85)) {
        circuits.push({ id: `c${id}`, module, channel, isSpare: true });
        continue;
      }
      const isLight = chance.is(0.65);
      const wish = isLight && chance.is(0.7) ? { wish: "nice-to-dim", wishWeight: chance.whole(1, 4) } : {};
      loads.push({
        id: `l${id}`,
        name: `load ${id}`,
        class: isLight ? "led-resistor" : "pump",
        currentA: { value: chance.between(0.5, isLight ? 4 : 8, 1), basis: "measured", plusMinus: 0 },
        ...wish,
      });
      circuits.push({ id: `c${id}`, module, channel, loads: [`l${id}`], canMove: chance.is(0.8), reach });
    }
  });
  const hasPlaces = chance.is(0.6);
  const record = {
    format: "fusebook/1",
    id: `row-${seed}`,
    coach: { name: `row ${seed}`, isInvented: true },
    policy: {
      labourRatePerHour: 60,
      moveWithinMin: 5 * chance.whole(1, 4),
      moveBetweenMin: 5 * chance.whole(3, 10),
      bankSettingMin: 5 * chance.whole(0, 2),
    },
    ...(hasPlaces
      ? {
          places: [
            { id: "bay", name: "bay", accessMin: 5 * chance.whole(0, 4) },
            { id: "shelf", name: "shelf", within: "bay", accessMin: 5 * chance.whole(1, 4) },
            { id: "locker", name: "locker", accessMin: 5 * chance.whole(1, 4) },
          ],
          nodes: [{ id: "bar", name: "bar", kind: "busbar" }],
          supplies: [
            { id: "bank", name: "bank", kind: "battery", node: "bar", place: chance.is(0.5) ? "locker" : "bay" },
          ],
        }
      : {}),
    moduleKinds: kinds.map(({ blocks, ...kind }) => ({
      ...kind,
      name: kind.id,
      channels: CHANNELS,
      output: blocks.length > 0 ? "pwm" : "relay",
      ratedSwitchedA: 15,
      ratedDimmedA: 6,
      fitsInPlaceOf: kinds.map((other) => other.id),
      dimBlocks: blocks.map((channels, i) => ({ id: `b${i + 1}`, channels })),
    })),
    modules: names.map((id) => ({
      id,
      kind: chance.is(0.8) ? "plain" : "pairs",
      ...(hasPlaces ? { place: chance.pick(["bay", "shelf", "locker"]) } : {}),
      ...(chance.is(0.08) ? { isDead: true } : {}),
    })),
    circuits,
    loads,
  };
  const read = readRecord(record);
  if (read.kind === "refused") throw new Error(read.faults.map((each) => `${each.path}: ${each.message}`).join("\n"));
  const constraints = {
    ...(chance.is(0.4) ? { rulesOut: ["reuse"] } : {}),
    ...(chance.is(0.25) ? { budget: dollars(100, 600) } : {}),
  };
  return { record: read.record, job: { id: "j1", title: "a row", constraints } as unknown as Job };
}

describe("a row of modules, by prices and joining, against the solver", () => {
  it(`${SEEDS} seeded coaches: the same points of cost, value and wires moved`, async () => {
    let points = 0;
    let moved = 0;
    for (let seed = 0; seed < SEEDS; seed++) {
      const { record, job } = coach(seed);
      const index = indexRecord(record);
      const problem = movesProblemOf(index, policyOf(record), demandOf(index, job));
      const row = await frontOfProblem(problem);
      const solved = await frontOfProblem(problem, { solver, way: "solver" });
      const measures = (front: typeof row) => front.points.map(({ cost, value, wires }) => [cost, value, wires]);
      expect(row, `seed ${seed}`).toMatchObject({ by: "chain", isComplete: true });
      expect(solved, `seed ${seed}`).toMatchObject({ by: "solver", isComplete: true });
      expect(measures(row), `seed ${seed}`).toEqual(measures(solved));
      points += row.points.length;
      moved += row.points.filter((point) => point.wires > 0).length;
    }
    // The seeds are worth something: many points, and many of them move wires.
    expect(points).toBeGreaterThan(200);
    expect(moved).toBeGreaterThan(100);
    console.log(points, moved);
  }, 600_000);
});
