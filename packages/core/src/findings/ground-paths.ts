import type { Cable } from "../record/index.js";
import type { CoachContext } from "./context.js";

/** Returns through structure: chassis and straps, and any other cable that leaves a ground and whose resistance somebody stated. */
export function* groundPaths(context: CoachContext): Iterable<Cable> {
  const { index } = context;
  const isGround = (node: string): boolean => index.nodes.get(node)?.kind === "ground";
  const onPositive = context.wiring().positive.sourceEnd;
  for (const cable of index.cables.values()) {
    if (onPositive.has(cable.id)) continue;
    const isStructure = cable.kind === "chassis" || cable.kind === "strap";
    if (isStructure || (cable.resistanceOhm !== undefined && (isGround(cable.from) || isGround(cable.to)))) yield cable;
  }
}

/** How many circuits with loads land their return on each node. */
export function returnsByNode({ index }: CoachContext): Map<string, number> {
  const counted = new Map<string, number>();
  for (const circuit of index.circuits.values()) {
    const node = circuit.return?.node;
    if (node !== undefined && (circuit.loads ?? []).length > 0) counted.set(node, (counted.get(node) ?? 0) + 1);
  }
  return counted;
}
