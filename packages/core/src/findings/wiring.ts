import type { Cable, CoachIndex } from "../record/index.js";

/** One side of the coach's cables, as walked from the supplies. */
export interface Side {
  /** Node ids that a supply reaches through cables. */
  readonly nodes: ReadonlySet<string>;
  /** By cable id, the node it is fed from. */
  readonly sourceEnd: ReadonlyMap<string, string>;
  /** By node id, the cable by which it is first reached; absent at a supply's own node. */
  readonly reachedBy: ReadonlyMap<string, Cable>;
  /** Cables that close a ring: a second path between two nodes. */
  readonly closing: readonly Cable[];
}

export interface Wiring {
  readonly positive: Side;
  readonly negative: Side;
}

function walk(starts: readonly (readonly string[])[], cablesAt: ReadonlyMap<string, readonly Cable[]>): Side {
  const nodes = new Set<string>();
  const sourceEnd = new Map<string, string>();
  const reachedBy = new Map<string, Cable>();
  for (const some of starts) {
    const queue = some.filter((node) => !nodes.has(node));
    for (const node of queue) nodes.add(node);
    for (let i = 0; i < queue.length; i++) {
      const node = queue[i]!;
      for (const cable of cablesAt.get(node) ?? []) {
        if (!sourceEnd.has(cable.id)) sourceEnd.set(cable.id, node);
        const far = cable.from === node ? cable.to : cable.from;
        if (nodes.has(far)) continue;
        nodes.add(far);
        reachedBy.set(far, cable);
        queue.push(far);
      }
    }
  }
  return { nodes, sourceEnd, reachedBy, closing: closingCables(sourceEnd, cablesAt) };
}

/** Cables whose two ends are joined already by others before them in the record: each closes a ring. */
function closingCables(
  onSide: ReadonlyMap<string, string>,
  cablesAt: ReadonlyMap<string, readonly Cable[]>,
): readonly Cable[] {
  const parent = new Map<string, string>();
  const rootOf = (node: string): string => {
    let at = node;
    for (let up = parent.get(at); up !== undefined; up = parent.get(at)) at = up;
    return at;
  };
  const closing: Cable[] = [];
  const seen = new Set<string>();
  for (const cable of [...cablesAt.values()].flat()) {
    if (seen.has(cable.id) || !onSide.has(cable.id)) continue;
    seen.add(cable.id);
    const from = rootOf(cable.from);
    const to = rootOf(cable.to);
    if (from === to) closing.push(cable);
    else parent.set(from, to);
  }
  return closing;
}

/** Which cables lie on the positive side and which on the return side, and how each is reached from the supplies; batteries first. */
export function wiringOf(index: CoachIndex): Wiring {
  const cablesAt = new Map<string, Cable[]>();
  for (const cable of index.cables.values())
    for (const end of new Set([cable.from, cable.to])) {
      const list = cablesAt.get(end);
      if (list === undefined) cablesAt.set(end, [cable]);
      else list.push(cable);
    }
  const supplies = [...index.supplies.values()];
  const batteries = supplies.filter((supply) => supply.kind === "battery");
  const others = supplies.filter((supply) => supply.kind !== "battery");
  return {
    positive: walk(
      [batteries, others].map((some) => some.flatMap((supply) => supply.node ?? [])),
      cablesAt,
    ),
    negative: walk(
      [batteries, others].map((some) => some.flatMap((supply) => supply.returnNode ?? [])),
      cablesAt,
    ),
  };
}
