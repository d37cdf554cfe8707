import type { CoachNetwork } from "./coach-network.js";
import { Bridges } from "./core-bridges.js";
import { Groups } from "./islands.js";
import { SparseLdl } from "./ldl.js";

/** A pair of nodes of the core, where circuits or supplies join: out at the positive end, back at the other. */
export interface Port {
  readonly positive: number;
  readonly negative: number;
}

/**
 * The core of a coach: cables, channel-to-splice ways and, where there are several, batteries. The volts that current drawn at one port takes from
 * another are Z x current; every entry of Z lies between two bounds over the figures' spans.
 */
export interface CoreBounds {
  readonly ports: readonly Port[];
  /** Z by port pair, ports x ports. */
  readonly lo: Float64Array;
  readonly hi: Float64Array;
  /** Ports that no battery feeds; nothing is bounded for them. */
  readonly isFed: readonly boolean[];
}

/**
 * Bounds on the core's transfer resistances. With one battery its terminals are held (its own resistance is counted apart); with several, each
 * battery's resistance is in the core and its volts are shorted.
 *
 * A branch that is the only way carries all that is drawn beyond it, so what two ports share of such branches is the sum of their resistances, with those
 * spans. In the loops that are left, the heat Q(x) = x'Zx that a set of injected currents makes never falls when a resistance rises (Rayleigh), and
 * Z(j,k) = (Q(j) + Q(k) - Q(j - k)) / 2 (Q(j) for one ampere at port j), so bounds on the three give bounds on Z.
 */
export function coreBounds(coach: CoachNetwork, ports: readonly Port[]): CoreBounds {
  const batteries = coach.supplies.filter((supply) => supply.branch >= 0);
  const only = batteries.length === 1 ? batteries[0] : undefined;
  const recordNodes = coach.nodeOf.size;
  const { branches, reference } = coach.network;
  const inCore = [
    ...coach.cableOfEdge.map((cable) => cable.branch),
    ...coach.circuits.filter((circuit) => circuit.entryBranch >= 0).map((circuit) => circuit.entryBranch),
    ...(only ? [] : batteries.map((battery) => battery.branch)),
  ];
  const held = new Set(only ? [only.positive, only.negative] : [reference]);
  const isConnected = connectedTo(
    held,
    recordNodes,
    inCore.map((b) => branches[b]!),
  );
  const bridges = new Bridges(
    recordNodes,
    inCore.map((b) => branches[b]!),
    held,
  );
  // Bridges count by themselves, so for the loops their two ends are one node.
  const groups = new Groups(recordNodes);
  for (const node of held) groups.join(node, [...held][0]!);
  inCore.forEach((b, i) => {
    if (bridges.isBridge[i]) groups.join(branches[b]!.from, branches[b]!.to);
  });
  const heldRoot = groups.rootOf([...held][0]!);
  const unknown = new Int32Array(recordNodes).fill(-1);
  let size = 0;
  for (let n = 0; n < recordNodes; n++) {
    const root = groups.rootOf(n);
    if (isConnected[n] && root !== heldRoot && unknown[root] === -1) unknown[root] = size++;
  }
  for (let n = 0; n < recordNodes; n++) unknown[n] = unknown[groups.rootOf(n)]!;
  const rows: number[] = [];
  const columns: number[] = [];
  const pair = inCore.map((b) => {
    const a = unknown[branches[b]!.from]!;
    const c = unknown[branches[b]!.to]!;
    if (a < 0 || c < 0 || a === c) return -1;
    rows.push(a);
    columns.push(c);
    return rows.length - 1;
  });
  const ldl = new SparseLdl(size, rows, columns);
  const count = ports.length;
  const isFed = ports.map((port) => isConnected[port.positive]! && isConnected[port.negative]!);
  const transferAt = (end: "lo" | "hi"): Float64Array => {
    ldl.diagonal.fill(0);
    ldl.offDiagonal.fill(0);
    inCore.forEach((b, i) => {
      const siemens = 1 / coach.ohmSpan[b]![end];
      const a = unknown[branches[b]!.from]!;
      const c = unknown[branches[b]!.to]!;
      if (a === c) return;
      if (a >= 0) ldl.diagonal[a]! += siemens;
      if (c >= 0) ldl.diagonal[c]! += siemens;
      if (pair[i]! >= 0) ldl.offDiagonal[pair[i]!]! -= siemens;
    });
    const z = new Float64Array(count * count);
    if (!ldl.factor()) return z.fill(Number.NaN);
    const injected = new Float64Array(size);
    const volts = new Float64Array(size);
    ports.forEach((port, k) => {
      if (!isFed[k]) return;
      injected.fill(0);
      const p = unknown[port.positive]!;
      const n = unknown[port.negative]!;
      if (p >= 0) injected[p]! += 1;
      if (n >= 0) injected[n]! -= 1;
      ldl.solve(injected, volts);
      ports.forEach((other, j) => {
        const a = unknown[other.positive]!;
        const b = unknown[other.negative]!;
        z[j * count + k] = (a < 0 ? 0 : volts[a]!) - (b < 0 ? 0 : volts[b]!);
      });
    });
    return z;
  };
  const lo = transferAt("lo");
  const hi = transferAt("hi");
  if (size > 0) spreadByHeat(lo, hi, count);
  const share = (i: number, port: Port): number =>
    Number(bridges.isBeyond(i, port.positive)) - Number(bridges.isBeyond(i, port.negative));
  inCore.forEach((b, i) => {
    if (!bridges.isBridge[i]) return;
    const { lo: least, hi: most } = coach.ohmSpan[b]!;
    const sharing = ports.map((port, k) => (isFed[k] ? share(i, port) : 0));
    for (let j = 0; j < count; j++)
      for (let k = 0; k < count; k++) {
        const sign = sharing[j]! * sharing[k]!;
        lo[j * count + k]! += sign > 0 ? least : sign < 0 ? -most : 0;
        hi[j * count + k]! += sign > 0 ? most : sign < 0 ? -least : 0;
      }
  });
  // The solves round; a part in ten thousand million outward covers it.
  for (let i = 0; i < lo.length; i++) {
    const slack = 1e-10 * Math.max(Math.abs(lo[i]!), Math.abs(hi[i]!)) + 1e-14;
    lo[i]! -= slack;
    hi[i]! += slack;
  }
  return { ports, lo, hi, isFed };
}

function spreadByHeat(lo: Float64Array, hi: Float64Array, count: number): void {
  const low = lo.slice();
  const high = hi.slice();
  const heat = (z: Float64Array, j: number, k: number) =>
    z[j * count + j]! + z[k * count + k]! - z[j * count + k]! - z[k * count + j]!;
  for (let j = 0; j < count; j++)
    for (let k = 0; k < count; k++) {
      const at = j * count + k;
      if (j === k) continue;
      lo[at] = (low[j * count + j]! + low[k * count + k]! - heat(high, j, k)) / 2;
      hi[at] = (high[j * count + j]! + high[k * count + k]! - heat(low, j, k)) / 2;
    }
}

function connectedTo(
  held: ReadonlySet<number>,
  size: number,
  branches: readonly { from: number; to: number }[],
): boolean[] {
  const at: number[][] = Array.from({ length: size }, () => []);
  for (const { from, to } of branches) {
    at[from]!.push(to);
    at[to]!.push(from);
  }
  const isReached: boolean[] = new Array(size).fill(false);
  const front = [...held];
  for (const node of front) isReached[node] = true;
  for (let node = front.pop(); node !== undefined; node = front.pop())
    for (const other of at[node]!)
      if (!isReached[other]) {
        isReached[other] = true;
        front.push(other);
      }
  return isReached;
}
