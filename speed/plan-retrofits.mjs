// Seeded coaches to plan for: modules in a row, loads that may be wired to any channel of their own module and of the two beside it, five kinds of module.
import { demandOf, movesProblemOf } from "@fusebook/core/plan";
import { indexRecord, policyOf, readRecord } from "@fusebook/core/record";
import { chanceOf } from "@fusebook/fixtures";

const KINDS = [
  { id: "plain", parts: 0, price: 60, ratedSwitchedA: 15, ratedTotalA: 80 },
  { id: "whole", parts: 1, price: 220, ratedSwitchedA: 12, ratedDimmedA: 8, ratedTotalA: 60 },
  { id: "halves", parts: 2, price: 300, ratedSwitchedA: 12, ratedDimmedA: 8, ratedTotalA: 60 },
  { id: "thirds", parts: 3, price: 360, ratedSwitchedA: 12, ratedDimmedA: 8, ratedTotalA: 60 },
  { id: "singles", parts: 12, price: 520, ratedSwitchedA: 12, ratedDimmedA: 10, ratedTotalA: 70 },
];
const CHANNELS = 12;

/** A record of so many modules of twelve channels, nine in ten in use. */
export function retrofitRecord({ modules, seed }) {
  const chance = chanceOf(seed * 1000 + modules);
  const channels = Array.from({ length: CHANNELS }, (_, i) => i + 1);
  const loads = [];
  const circuits = [];
  const fitted = [];
  for (let m = 0; m < modules; m++) {
    fitted.push({ id: `m${m}`, kind: chance.is(0.75) ? "plain" : "halves" });
    const reach = [m - 1, m + 1].filter((other) => other >= 0 && other < modules).map((other) => `m${other}`);
    let sumA = 0;
    for (const channel of channels) {
      const place = { id: `c${m}.${channel}`, module: `m${m}`, channel };
      if (!chance.is(0.9)) {
        circuits.push({ ...place, isSpare: true });
        continue;
      }
      const isLight = chance.is(0.6);
      let currentA = isLight ? chance.between(0.3, 3.5, 1) : chance.between(1, 10, 1);
      if (sumA + currentA > 56) currentA = 0.3;
      sumA += currentA;
      const mayDim = chance.is(isLight ? 0.9 : 0.15);
      const id = `l${m}.${channel}`;
      const wish = mayDim && chance.is(0.6) ? { wish: "nice-to-dim", wishWeight: 60 * chance.whole(1, 3) } : {};
      loads.push({
        id,
        name: `load ${m}.${channel}`,
        class: mayDim ? "led-resistor" : "pump",
        currentA: { value: currentA, basis: "measured", plusMinus: 0 },
        ...wish,
      });
      circuits.push({ ...place, loads: [id], canMove: true, reach });
    }
  }
  const read = readRecord({
    format: "fusebook/1",
    id: `retrofit-${modules}-${seed}`,
    coach: { name: `retrofit ${modules} ${seed}`, isInvented: true },
    policy: { labourRatePerHour: 60, moveWithinMin: 40, moveBetweenMin: 120 },
    moduleKinds: KINDS.map(({ parts, ...kind }) => ({
      ...kind,
      name: kind.id,
      channels: CHANNELS,
      output: parts > 0 ? "pwm" : "relay",
      fitsInPlaceOf: KINDS.map((other) => other.id),
      dimBlocks: Array.from({ length: parts }, (_, part) => ({
        id: `b${part + 1}`,
        channels: channels.filter((channel) => Math.floor(((channel - 1) * parts) / CHANNELS) === part),
      })),
    })),
    modules: fitted,
    circuits,
    loads,
  });
  if (read.kind === "refused")
    throw new Error(read.faults.map((fault) => `${fault.path}: ${fault.message}`).join("\n"));
  return read.record;
}

/** The problem with moves of such a record, and the value of all its wishes together. */
export function retrofitProblem(size) {
  const index = indexRecord(retrofitRecord(size));
  const problem = movesProblemOf(index, policyOf(index.record), demandOf(index));
  const allValue = index.record.loads.reduce((sum, load) => sum + 1000 * (load.wishWeight ?? 0), 0);
  return { problem, allValue };
}
