import { type LoadModel, type Network, solveNetwork } from "@fusebook/core/network";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { seededChance, seededNetwork } from "./network-states.js";

const RUNS = { seed: 20260502, numRuns: 120 } as const;
const seeds = fc.integer({ min: 1, max: 1_000_000 });
const sizes = fc.integer({ min: 1, max: 25 });

function solved(network: Network) {
  const found = solveNetwork(network);
  if (found.kind !== "known") throw new Error(JSON.stringify(found));
  return found.value;
}

const close = (a: number, b: number, relative: number, least: number) =>
  Math.abs(a - b) <= relative * Math.max(Math.abs(a), Math.abs(b)) + least;

/** The same load as it would be in a network whose every resistance is `by` times as large: the same volts, currents over `by`. */
function stretched(model: LoadModel, by: number): LoadModel {
  switch (model.kind) {
    case "resistance":
      return { ...model, resistanceOhm: model.resistanceOhm * by };
    case "led":
      return { ...model, resistanceOhm: model.resistanceOhm * by };
    case "motor":
      return { ...model, runningA: model.runningA / by, stallOhm: model.stallOhm * by };
    case "power":
      return { ...model, powerW: model.powerW / by };
    case "regulated":
      return { ...model, outputOhm: model.outputOhm * by, maxA: model.maxA / by };
    default:
      return { ...model, currentA: model.currentA / by };
  }
}

function shuffled(size: number, seed: number): number[] {
  const chance = seededChance(seed);
  const order = Array.from({ length: size }, (_, i) => i);
  for (let i = size - 1; i > 0; i--) {
    const j = Math.floor(chance() * (i + 1));
    [order[i], order[j]] = [order[j]!, order[i]!];
  }
  return order;
}

describe("laws of the network solver", () => {
  it("scaling: all resistances times a number leaves the volts and divides the currents", () => {
    fc.assert(
      fc.property(seeds, sizes, fc.double({ min: 0.1, max: 50, noNaN: true }), (seed, circuits, by) => {
        const network = seededNetwork({ seed, circuits });
        const a = solved(network);
        const b = solved({
          ...network,
          branches: network.branches.map((branch) => ({ ...branch, resistanceOhm: branch.resistanceOhm * by })),
          loads: network.loads.map((load) => ({ ...load, model: stretched(load.model, by) })),
        });
        a.nodeV.forEach((v, n) => {
          expect(close(v, b.nodeV[n]!, 1e-8, 1e-9)).toBe(true);
        });
        a.branchA.forEach((i, k) => {
          expect(close(i, b.branchA[k]! * by, 1e-7, 1e-6)).toBe(true);
        });
      }),
      RUNS,
    );
  });

  it("scaling: in a linear network all sources times a number multiply every volt and ampere", () => {
    fc.assert(
      fc.property(seeds, sizes, fc.double({ min: 0.1, max: 50, noNaN: true }), (seed, circuits, by) => {
        const network = seededNetwork({ seed, circuits, isLinear: true });
        const a = solved(network);
        const b = solved({
          ...network,
          branches: network.branches.map((one) => (one.emfV === undefined ? one : { ...one, emfV: one.emfV * by })),
        });
        a.nodeV.forEach((v, n) => {
          expect(close(v * by, b.nodeV[n]!, 1e-9, 1e-9 * by)).toBe(true);
        });
      }),
      RUNS,
    );
  });

  it("symmetry: numbering nodes, branches and loads otherwise gives the same answer", () => {
    fc.assert(
      fc.property(seeds, sizes, seeds, (seed, circuits, order) => {
        const network = seededNetwork({ seed, circuits });
        const nodes = shuffled(network.nodeCount, order);
        const branches = shuffled(network.branches.length, order + 1);
        const loads = shuffled(network.loads.length, order + 2);
        const renamed = <T extends { from: number; to: number }>(one: T): T => ({
          ...one,
          from: nodes[one.from]!,
          to: nodes[one.to]!,
        });
        const a = solved(network);
        const b = solved({
          nodeCount: network.nodeCount,
          reference: nodes[network.reference]!,
          branches: branches.map((k) => renamed(network.branches[k]!)),
          loads: loads.map((k) => renamed(network.loads[k]!)),
        });
        a.nodeV.forEach((v, n) => {
          expect(close(v, b.nodeV[nodes[n]!]!, 1e-9, 1e-9)).toBe(true);
        });
      }),
      RUNS,
    );
  });

  it("symmetry: turning a branch round turns its current round", () => {
    fc.assert(
      fc.property(seeds, sizes, (seed, circuits) => {
        const network = seededNetwork({ seed, circuits });
        const a = solved(network);
        const b = solved({
          ...network,
          branches: network.branches.map((one) => ({
            from: one.to,
            to: one.from,
            resistanceOhm: one.resistanceOhm,
            ...(one.emfV === undefined ? {} : { emfV: -one.emfV }),
          })),
        });
        a.branchA.forEach((i, k) => {
          expect(close(i, -b.branchA[k]!, 1e-8, 1e-6)).toBe(true);
        });
      }),
      RUNS,
    );
  });

  it("reciprocity: a source in one branch drives through another what it would drive through the first from there", () => {
    fc.assert(
      fc.property(seeds, sizes, seeds, (seed, circuits, choice) => {
        const network = seededNetwork({ seed, circuits, isLinear: true });
        const chance = seededChance(choice);
        const one = Math.floor(chance() * network.branches.length);
        const other = Math.floor(chance() * network.branches.length);
        const drivenAt = (at: number) =>
          solved({
            ...network,
            branches: network.branches.map((b, k) => ({
              from: b.from,
              to: b.to,
              resistanceOhm: b.resistanceOhm,
              emfV: k === at ? 10 : 0,
            })),
          });
        expect(close(drivenAt(one).branchA[other]!, drivenAt(other).branchA[one]!, 1e-8, 1e-9)).toBe(true);
      }),
      RUNS,
    );
  });

  it("more copper: in a radial network a thicker wire never adds to the drop of a load behind it", () => {
    fc.assert(
      fc.property(
        seeds,
        sizes,
        seeds,
        fc.double({ min: 0.05, max: 0.95, noNaN: true }),
        (seed, circuits, choice, ratio) => {
          const radial = radialNetwork(seed, circuits);
          const at = 1 + Math.floor(seededChance(choice)() * (radial.network.branches.length - 1));
          const thicker = {
            ...radial.network,
            branches: radial.network.branches.map((b, k) =>
              k === at ? { ...b, resistanceOhm: b.resistanceOhm * ratio } : b,
            ),
          };
          const a = solved(radial.network);
          const b = solved(thicker);
          radial.network.loads.forEach((load, k) => {
            if (radial.isBehind(at, load.from))
              expect(b.nodeV[load.from]! - a.nodeV[load.from]!, `load ${k}`).toBeGreaterThan(-1e-9);
          });
        },
      ),
      RUNS,
    );
  });

  it("no answer ever holds a number that is none, however wild the figures; what has no point is refused", () => {
    const wild = fc.double({ min: 1e-6, max: 1e6, noNaN: true });
    const model: fc.Arbitrary<LoadModel> = fc.oneof(
      fc.record({ kind: fc.constant("resistance" as const), resistanceOhm: wild }),
      fc.record({ kind: fc.constant("current" as const), currentA: wild, kneeV: wild }),
      fc.record({ kind: fc.constant("power" as const), powerW: wild, dropOutV: wild }),
      fc.record({ kind: fc.constant("led" as const), forwardV: wild, resistanceOhm: wild }),
      fc.record({ kind: fc.constant("filament" as const), currentA: wild, ratedV: wild }),
      fc.record({ kind: fc.constant("motor" as const), runningA: wild, stallOhm: wild }),
      fc.record({ kind: fc.constant("regulated" as const), setV: wild, outputOhm: wild, maxA: wild }),
    );
    const node = fc.integer({ min: 0, max: 7 });
    const branch = fc.record({
      from: node,
      to: node,
      resistanceOhm: fc.oneof(wild, fc.constantFrom(0, -1, Number.NaN)),
      emfV: fc.double({ min: -50, max: 50, noNaN: true }),
    });
    const counts = { known: 0, refused: 0 };
    fc.assert(
      fc.property(
        fc.array(branch, { maxLength: 12 }),
        fc.array(fc.record({ from: node, to: node, model }), { maxLength: 8 }),
        (branches, loads) => {
          const found = solveNetwork({ nodeCount: 8, reference: 0, branches, loads });
          if (found.kind !== "known") {
            counts.refused++;
            return found.kind === "refused";
          }
          counts.known++;
          const { nodeV, branchA, loadA, balance } = found.value;
          return (
            [...nodeV, ...branchA, ...loadA].every(Number.isFinite) &&
            balance.currentRelative <= 1e-9 &&
            balance.powerRelative <= 1e-9
          );
        },
      ),
      { seed: 20260502, numRuns: 2000 },
    );
    expect(counts.known).toBeGreaterThan(200);
    expect(counts.refused).toBeGreaterThan(50);
  });
});

/** A battery, a tree of wires and loads at its ends, all returning to battery negative. */
function radialNetwork(seed: number, circuits: number) {
  const chance = seededChance(seed);
  const parentBranch = [-1, 0];
  const up = [-1, 0];
  const branches = [{ from: 0, to: 1, resistanceOhm: 0.005, emfV: 12.6 }];
  const loads: { from: number; to: number; model: LoadModel }[] = [];
  for (let n = 2; n < 2 + 2 * circuits; n++) {
    const from = 1 + Math.floor(chance() * (n - 1));
    up.push(from);
    parentBranch.push(branches.length);
    branches.push({ from, to: n, resistanceOhm: 0.005 + 0.05 * chance(), emfV: 0 });
    const currentA = 0.1 + 0.5 * chance();
    const models: LoadModel[] = [
      { kind: "resistance", resistanceOhm: 12 / currentA },
      { kind: "filament", currentA, ratedV: 12 },
      { kind: "power", powerW: 6 * currentA, dropOutV: 5 },
      { kind: "led", forwardV: 9, resistanceOhm: 3 / currentA },
    ];
    loads.push({ from: n, to: 0, model: models[Math.floor(chance() * 4)]! });
  }
  const isBehind = (branch: number, node: number): boolean => {
    for (let n = node; n > 0; n = up[n]!) if (parentBranch[n] === branch) return true;
    return false;
  };
  return { network: { nodeCount: 2 + 2 * circuits, reference: 0, branches, loads } satisfies Network, isBehind };
}
