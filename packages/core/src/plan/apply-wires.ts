import type { Circuit, CircuitId, CoachRecord, Load, ModuleId, WireRun } from "../record/index.js";
import type { CircuitMove, Plan, SteadyFeed } from "./plan.js";

/** What was read at the old place says nothing of the new one; what its label said becomes its name. */
function movedCircuit(circuit: Circuit, move: CircuitMove): Circuit {
  const { verified, label, ...kept } = circuit;
  const name = kept.name ?? (label === undefined || label === "" ? undefined : label);
  const reach =
    move.from.module === move.to.module
      ? kept.reach
      : [...new Set([move.from.module, ...(kept.reach ?? [])])].filter((module) => module !== move.to.module);
  return {
    ...kept,
    ...(name === undefined ? {} : { name }),
    ...(reach === undefined ? {} : { reach }),
    module: move.to.module,
    channel: move.to.channel,
  } as Circuit;
}

/** A new run of the same wire, from the feed node to the load. */
function runLike(run: WireRun | undefined): WireRun | undefined {
  if (run === undefined) return undefined;
  const { resistanceOhm, node, ...alike } = run;
  return alike as WireRun;
}

const freshId = (wanted: string, taken: Set<string>): CircuitId => {
  let id = wanted.slice(0, 60);
  for (let i = 2; taken.has(id); i++) id = `${wanted.slice(0, 60)}-${i}`;
  taken.add(id);
  return id as CircuitId;
};

function feedCircuit(feed: SteadyFeed, from: Circuit, load: Load | undefined, taken: Set<string>): Circuit {
  const name = load?.name ?? feed.load;
  const out = runLike(from.out);
  return {
    id: freshId(`${feed.load}-feed`, taken),
    name: `${name}, own feed`,
    fusePosition: { node: feed.node, name: `feed of ${name}` },
    fuse: { ratedA: feed.fuseA, type: from.fuse?.type ?? "blade" },
    ...(out === undefined ? {} : { out }),
    ...(from.return === undefined ? {} : { return: from.return }),
    loads: [feed.load],
  } as Circuit;
}

const isSpare = (circuit: Circuit): boolean => circuit.isSpare === true && (circuit.loads ?? []).length === 0;
const placeOf = (module: string | undefined, channel: number | undefined): string => `${module} ${channel}`;

/** A channel with nothing on it: no wire, no fuse, no label. */
const bare = (id: CircuitId, module: ModuleId, channel: number): Circuit => ({
  id,
  module,
  channel,
  isSpare: true,
  loads: [],
});

/**
 * Spare entries after the work: those whose channel is taken now go to channels that were left, their own module first; a channel left without one gets one, so
 * that the record says that nothing is on it.
 */
function spared(
  circuits: readonly Circuit[],
  left: readonly { module: ModuleId; channel: number }[],
  taken: Set<string>,
): Circuit[] {
  const used = new Set(circuits.filter((each) => !isSpare(each)).map((each) => placeOf(each.module, each.channel)));
  const covered = new Set<string>();
  const homeless: Circuit[] = [];
  for (const circuit of circuits) {
    if (!isSpare(circuit) || circuit.module === undefined) continue;
    const at = placeOf(circuit.module, circuit.channel);
    if (used.has(at) || covered.has(at)) homeless.push(circuit);
    else covered.add(at);
  }
  const open = left.filter((each) => {
    const at = placeOf(each.module, each.channel);
    return !used.has(at) && !covered.has(at) && Boolean(covered.add(at));
  });
  const rehomed = new Map<Circuit, Circuit | undefined>();
  const settle = (circuit: Circuit, isAllowed: (module: ModuleId) => boolean): void => {
    const i = open.findIndex((each) => isAllowed(each.module));
    const place = open[i];
    if (place === undefined) return;
    open.splice(i, 1);
    rehomed.set(circuit, bare(circuit.id, place.module, place.channel));
  };
  for (const circuit of homeless) settle(circuit, (module) => module === circuit.module);
  for (const circuit of homeless) if (!rehomed.has(circuit)) settle(circuit, () => true);
  const gone = new Set(homeless.filter((circuit) => !rehomed.has(circuit)));
  return [
    ...circuits.filter((circuit) => !gone.has(circuit)).map((circuit) => rehomed.get(circuit) ?? circuit),
    ...open.map((place) => bare(freshId(`${place.module}.${place.channel}-spare`, taken), place.module, place.channel)),
  ];
}

/** The circuits as they will be when wires have been moved, fed apart and changed. Fuses that the plan changes are another matter: see `applyPlan`. */
export function circuitsAfterWires(record: CoachRecord, plan: Plan): readonly Circuit[] {
  const before = record.circuits ?? [];
  if (plan.moves.length + plan.steadyFeeds.length + plan.rewires.length === 0) return before;
  const moves = new Map(plan.moves.map((move) => [move.circuit, move]));
  const rewires = new Map(plan.rewires.map((rewire) => [rewire.circuit, rewire]));
  const loads = new Map((record.loads ?? []).map((load) => [load.id, load]));
  const taken = new Set<string>(before.map((circuit) => circuit.id));
  const left = plan.moves.map((move) => move.from);
  const added: Circuit[] = [];
  const after = before.map((circuit): Circuit => {
    const move = moves.get(circuit.id);
    const rewire = rewires.get(circuit.id);
    const feeds = plan.steadyFeeds.filter((feed) => feed.circuit === circuit.id);
    let now = circuit;
    if (rewire !== undefined) {
      const { sectionMm2, resistanceOhm, ...run } = now.out ?? {};
      now = { ...now, out: { ...run, gauge: rewire.toGauge } } as Circuit;
    }
    for (const feed of feeds) added.push(feedCircuit(feed, circuit, loads.get(feed.load), taken));
    if (feeds.length > 0) {
      const fed = new Set(feeds.map((feed) => feed.load));
      const { verified, ...kept } = now;
      now = { ...kept, loads: (now.loads ?? []).filter((load) => !fed.has(load)) } as Circuit;
      if ((now.loads ?? []).length === 0 && circuit.module !== undefined && circuit.channel !== undefined)
        now = bare(circuit.id, circuit.module, circuit.channel);
    }
    return move === undefined ? now : movedCircuit(now, move);
  });
  return [...spared(after, left, taken), ...added];
}
