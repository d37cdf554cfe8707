import type { Circuit } from "../record/index.js";
import type { CircuitWiring, LoadWiring, SupplyWiring } from "./coach-network.js";
import type { Draft } from "./draft.js";
import { loadFiguresOf } from "./load-figures.js";
import type { LoadModel } from "./load-model.js";
import { pulsedModel } from "./pulsed-model.js";
import type { Edge } from "./reach.js";
import { type Series, series } from "./series.js";

/** Lays every circuit that is on. A way that is not known is left out, and what hangs on it is joined where it would start. */
export function layCircuits(draft: Draft, supplies: readonly SupplyWiring[], first: SupplyWiring): CircuitWiring[] {
  const { index, state, edges } = draft;
  // What is not known of a cable inside a loop is not known for anything.
  const loopNeeds = edges
    .filter((edge, e) => !edge.isKnown && !isOnTree(supplies, e, edge))
    .flatMap((edge) => edge.needs);
  const circuits: CircuitWiring[] = [];
  const isOn = (circuit: Circuit) => state.on.has(circuit.id) && (state.dutyRatio?.get(circuit.id) ?? 1) > 0;
  for (const circuit of index.circuits.values()) {
    if (!isOn(circuit)) continue;
    const path = index.pathOf("circuits", circuit.id);
    const ways = draft.finder.waysOf(circuit, path);
    const feedNode = draft.nodeAt(ways.feedId) ?? -1;
    const returnNode = draft.nodeAt(ways.returnId) ?? -1;
    const wayNeeds = [...loopNeeds];
    if (ways.feedId === undefined) wayNeeds.push(...ways.feedNeeds);
    else if (feedNode < 0) wayNeeds.push(`nodes/${ways.feedId}`);
    if (ways.returnId === undefined) wayNeeds.push(...ways.returnNeeds);
    else if (returnNode < 0) wayNeeds.push(`nodes/${ways.returnId}`);
    const supply = feedNode < 0 ? first : supplies.find((s) => s.toFeeds.isReached[feedNode]);
    const isReturned = returnNode < 0 || supply === undefined || supply.toReturns.isReached[returnNode] === 1;
    const isCutOff = supply === undefined || !isReturned;
    if (supply && feedNode >= 0) wayNeeds.push(...supply.toFeeds.needsTo(feedNode));
    if (supply && returnNode >= 0 && isReturned) wayNeeds.push(...supply.toReturns.needsTo(returnNode));
    const joinedFeed = feedNode >= 0 ? feedNode : first.positive;
    const joinedReturn = returnNode >= 0 ? returnNode : first.negative;
    wayNeeds.push(...ways.entry.needs, ...ways.out.needs, ...ways.back.needs);
    let start = joinedFeed;
    let entryBranch = -1;
    let entry: Series | undefined;
    const splice = draft.nodeAt(ways.spliceId);
    if (splice !== undefined) {
      entry = series(ways.entry.pieces);
      entryBranch = draft.branch(start, splice, entry);
      start = splice;
    } else if (ways.spliceId !== undefined) wayNeeds.push(`nodes/${ways.spliceId}`);
    const out = ways.out.isKnown ? series(ways.out.pieces) : undefined;
    const farNode = out ? draft.newNode() : start;
    const outBranch = out ? draft.branch(start, farNode, out) : -1;
    const back = ways.back.isKnown ? series(ways.back.pieces) : undefined;
    const commonNode = back ? draft.newNode() : joinedReturn;
    const returnBranch = back ? draft.branch(commonNode, joinedReturn, back) : -1;
    const currentNeeds: string[] = [];
    if ((circuit.loads ?? []).length === 0 && !circuit.isSpare) currentNeeds.push(`${path}.loads`);
    const wired = layLoads(draft, circuit, path, farNode, commonNode, currentNeeds);
    for (const need of [...wayNeeds, ...currentNeeds, ...wired.flatMap((one) => one.tailNeeds)])
      draft.leftOut.add(need);
    circuits.push({
      circuit,
      path,
      supply,
      feedNode,
      returnNode,
      joinedFeed,
      joinedReturn,
      entryBranch,
      entry,
      outBranch,
      out,
      returnBranch,
      back,
      farNode,
      commonNode,
      loads: wired,
      wayNeeds: [...new Set(wayNeeds)],
      currentNeeds,
      isCutOff,
    });
  }
  return circuits;
}

/** Lays the loads of one circuit between its far node and its common return; what is not known of their currents goes to `currentNeeds`. */
function layLoads(
  draft: Draft,
  circuit: Circuit,
  path: string,
  farNode: number,
  commonNode: number,
  currentNeeds: string[],
): LoadWiring[] {
  const { index, state, nominalV } = draft;
  const wired: LoadWiring[] = [];
  for (const [n, id] of (circuit.loads ?? []).entries()) {
    const found = index.loads.get(id);
    if (found === undefined) {
      currentNeeds.push(`${path}.loads[${n}]`);
      continue;
    }
    const loadPath = index.pathOf("loads", id);
    const figures = loadFiguresOf(found, nominalV, loadPath, state.stalled?.has(id));
    const tailWay = draft.finder.tailOf(found, loadPath);
    if (figures.kind !== "known") {
      const needs = figures.kind === "missing" ? figures.needs : [`${loadPath}.currentA`];
      currentNeeds.push(...needs);
      wired.push({
        load: found,
        path: loadPath,
        figures: undefined,
        currentNeeds: needs,
        networkLoad: -1,
        tailBranch: -1,
        tail: undefined,
        tailNeeds: [],
      });
      continue;
    }
    draft.finder.assumed.push(...figures.value.assumed);
    const tail = tailWay?.isKnown ? series(tailWay.pieces) : undefined;
    const positive = tail ? draft.newNode() : farNode;
    const tailBranch = tail ? draft.branch(farNode, positive, tail) : -1;
    const { nominal, least, most } = figures.value;
    const dutyRatio = state.dutyRatio?.get(circuit.id) ?? 1;
    const inPulse = (model: LoadModel) => pulsedModel(model, dutyRatio);
    const networkLoad = draft.load(positive, commonNode, inPulse(nominal), inPulse(least), inPulse(most));
    wired.push({
      load: found,
      path: loadPath,
      figures: figures.value,
      currentNeeds: [],
      networkLoad,
      tailBranch,
      tail,
      tailNeeds: tailWay?.needs ?? [],
    });
  }
  return wired;
}

/** Is this cable the way by which some supply reaches one of its ends? */
const isOnTree = (supplies: readonly SupplyWiring[], e: number, edge: Edge): boolean =>
  supplies.some((s) => [s.toFeeds, s.toReturns].some((reach) => reach.by[edge.a] === e || reach.by[edge.b] === e)) ||
  supplies.every((s) =>
    [s.toFeeds, s.toReturns].every((reach) => !reach.isReached[edge.a] && !reach.isReached[edge.b]),
  );
