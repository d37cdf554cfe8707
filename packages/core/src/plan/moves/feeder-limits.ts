import { ampacityOf } from "../../protection/index.js";
import { spanOf } from "../../quantity/index.js";
import type { Cable } from "../../record/index.js";
import { channelLoadsOf, looseLoadsOf } from "../channel-load.js";
import type { Basis, Ground } from "./ground.js";
import type { FeederLimit, MoveCircuit } from "./problem.js";

const rounded = (currentA: number): number => Math.round(currentA * 1e6) / 1e6;

/** Nodes that some supply reaches when this cable or node is taken away. */
function reachedWithout(basis: Basis, gone: { readonly cable?: string; readonly node?: string }): ReadonlySet<string> {
  const next = new Map<string, string[]>();
  const join = (a: string, b: string): void => {
    const list = next.get(a);
    if (list === undefined) next.set(a, [b]);
    else list.push(b);
  };
  for (const cable of basis.index.cables.values()) {
    if (cable.id === gone.cable || cable.from === gone.node || cable.to === gone.node) continue;
    join(cable.from, cable.to);
    join(cable.to, cable.from);
  }
  const open = [...basis.index.supplies.values()].flatMap((supply) =>
    supply.node === undefined || supply.node === gone.node ? [] : [supply.node as string],
  );
  const reached = new Set<string>(open);
  for (let at = open.pop(); at !== undefined; at = open.pop())
    for (const other of next.get(at) ?? [])
      if (!reached.has(other)) {
        reached.add(other);
        open.push(other);
      }
  return reached;
}

function cableMostA(basis: Basis, cable: Cable): number {
  let mostA = Number.POSITIVE_INFINITY;
  if (cable.protection?.ratedA !== undefined) mostA = spanOf(cable.protection.ratedA, "rating").lo;
  if ((cable.kind ?? "wire") !== "wire") return mostA;
  const ampacity = ampacityOf(cable, basis.policy, "", (place) => basis.index.places.get(place)?.zone);
  return ampacity.kind === "known" ? Math.min(mostA, ampacity.value.ampacityA) : mostA;
}

/** The current of one circuit at the feed of a set of modules, one way of sitting after the other; equal for all: the limit does not depend on it. */
const dependsOn = (circuit: MoveCircuit, modules: ReadonlySet<number>): boolean => {
  const drawn = circuit.placings.map(
    (placing) =>
      (placing.module !== undefined && modules.has(placing.module) ? placing.currentA : 0) +
      (modules.has(circuit.home) ? placing.steadyA : 0),
  );
  return drawn.some((currentA) => currentA > (drawn[0] ?? 0) + 1e-9);
};

/**
 * What may the nodes and cables on the only way to some modules carry, as far as a plan can change it? Everything on at once, at its upper end; never less than what
 * hangs there as found; no more than that where some of it is not known.
 */
export function feederLimits(
  basis: Basis,
  grounds: readonly Ground[],
  circuits: readonly MoveCircuit[],
): FeederLimit[] {
  const { index, policy } = basis;
  if (index.supplies.size === 0) return [];
  const all = reachedWithout(basis, {});
  const limits: FeederLimit[] = [];
  const add = (
    collection: FeederLimit["collection"],
    id: string,
    mostA: number,
    gone: { cable?: string; node?: string },
  ) => {
    if (!Number.isFinite(mostA)) return;
    const reached = reachedWithout(basis, gone);
    const isCut = (node: string | undefined): boolean => node !== undefined && all.has(node) && !reached.has(node);
    const modules = grounds.filter((ground) => isCut(ground.module.feedNode)).map((ground) => ground.order);
    const within = new Set(modules);
    if (modules.length === 0 || !circuits.some((circuit) => dependsOn(circuit, within))) return;
    const here = [
      ...modules.flatMap((order) => channelLoadsOf(index, policy, grounds[order]?.module as Ground["module"])),
      ...looseLoadsOf(index, policy).filter((on) => isCut(on.circuit.fusePosition?.node)),
    ];
    const chosen = new Set(circuits.map((circuit) => circuit.circuit));
    const sum = (loads: typeof here): number => loads.reduce((total, on) => total + (on.highA ?? 0), 0);
    const own = here.filter((on) => chosen.has(on.circuit.id));
    const isKnown = here.every((on) => on.highA !== undefined);
    const leftA = isKnown ? Math.max(mostA, sum(here)) - sum(here.filter((on) => !own.includes(on))) : sum(own);
    limits.push({ collection, id, modules, mostA: rounded(leftA) });
  };
  for (const node of index.nodes.values())
    if (node.ratedA !== undefined) add("nodes", node.id, spanOf(node.ratedA, "rating").lo, { node: node.id });
  for (const cable of index.cables.values()) add("cables", cable.id, cableMostA(basis, cable), { cable: cable.id });
  return limits;
}
