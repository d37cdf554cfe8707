import type { LoadModel, Network, NetworkBranch, NetworkLoad } from "@fusebook/core/network";

/** A repeatable stream of numbers from 0 to 1, by a 32-bit mixing step. */
export function seededChance(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

export interface StateOptions {
  readonly seed: number;
  readonly circuits: number;
  /** Leave out the regulated and the constant-power models, whose answer does not scale. */
  readonly isLinear?: boolean;
}

/**
 * One made-up state of a coach straight as a network: positive and return rails as trees with extra cables across them (meshes), one to three
 * batteries, chargers, circuits of every load model whose returns share the return rail.
 */
export function seededNetwork({ seed, circuits, isLinear = false }: StateOptions): Network {
  const chance = seededChance(seed);
  const between = (lo: number, hi: number) => lo + (hi - lo) * chance();
  const pick = (n: number) => Math.min(n - 1, Math.floor(chance() * n));
  const nominalV = chance() < 0.8 ? 12 : 24;
  const branches: NetworkBranch[] = [];
  const loads: NetworkLoad[] = [];
  let nodeCount = 1;
  const rail = (root: number, size: number): number[] => {
    const nodes = [root];
    for (let n = 0; n < size; n++) {
      const from = nodes[pick(Math.min(nodes.length, 6))]!;
      nodes.push(nodeCount);
      branches.push({ from, to: nodeCount++, resistanceOhm: between(0.0003, 0.006) / Math.sqrt(circuits / 20 + 1) });
    }
    for (let extra = pick(3); extra > 0; extra--) {
      const [a, b] = [nodes[pick(nodes.length)]!, nodes[pick(nodes.length)]!];
      if (a !== b) branches.push({ from: a, to: b, resistanceOhm: between(0.0005, 0.01) });
    }
    return nodes;
  };
  const size = 2 + Math.ceil(circuits / 8);
  const positive = rail(nodeCount++, size);
  const returns = rail(0, Math.max(2, Math.ceil(size / 2)));
  const batteries = 1 + pick(3);
  for (let b = 0; b < batteries; b++)
    branches.push({
      from: b === 0 ? 0 : returns[pick(returns.length)]!,
      to: b === 0 ? positive[0]! : positive[pick(positive.length)]!,
      resistanceOhm: between(0.002, 0.02) / (circuits / 40 + 1),
      emfV: (nominalV / 12) * between(12.1, 12.9),
    });
  if (!isLinear && chance() < 0.5)
    loads.push({
      from: positive[pick(positive.length)]!,
      to: returns[pick(returns.length)]!,
      model: {
        kind: "regulated",
        setV: (nominalV / 12) * between(13.2, 14.2),
        outputOhm: between(0.002, 0.02),
        maxA: between(10, 80),
      },
    });
  for (let c = 0; c < circuits; c++) {
    const far = nodeCount++;
    const common = nodeCount++;
    branches.push({ from: positive[pick(positive.length)]!, to: far, resistanceOhm: between(0.02, 0.25) });
    branches.push({ from: common, to: returns[pick(returns.length)]!, resistanceOhm: between(0.01, 0.15) });
    for (let k = 1 + pick(2); k > 0; k--) {
      let at = far;
      if (chance() < 0.3) {
        at = nodeCount++;
        branches.push({ from: far, to: at, resistanceOhm: between(0.01, 0.1) });
      }
      loads.push({
        from: at,
        to: common,
        model: isLinear ? { kind: "resistance", resistanceOhm: between(2, 60) } : modelFor(pick(6), nominalV, between),
      });
    }
  }
  return { nodeCount, reference: 0, branches, loads };
}

function modelFor(which: number, nominalV: number, between: (lo: number, hi: number) => number): LoadModel {
  const currentA = between(0.1, 2.5);
  switch (which) {
    case 0:
      return { kind: "resistance", resistanceOhm: nominalV / currentA };
    case 1:
      return { kind: "current", currentA, kneeV: 0.5 * nominalV };
    case 2:
      return { kind: "power", powerW: currentA * nominalV * 0.6, dropOutV: 0.7 * nominalV };
    case 3:
      return { kind: "led", forwardV: 0.75 * nominalV, resistanceOhm: (0.25 * nominalV) / currentA };
    case 4:
      return { kind: "filament", currentA, ratedV: nominalV };
    default:
      return { kind: "motor", runningA: currentA * 2, stallOhm: nominalV / (currentA * 10) };
  }
}
