import { figureValue, known, missing, type Outcome, type Span, spanOf } from "../quantity/index.js";
import { type Circuit, type CoachIndex, policyOf } from "../record/index.js";
import { WayFinder } from "./circuit-way.js";
import { CLASS_FIGURES } from "./class-figures.js";
import type {
  CableWiring,
  CircuitWiring,
  CoachNetwork,
  LoadBounds,
  LoadWiring,
  ModuleWiring,
  SupplyWiring,
} from "./coach-network.js";
import { fuseResistance } from "./fuse-resistance.js";
import { loadFiguresOf } from "./load-figures.js";
import type { LoadModel } from "./load-model.js";
import type { NetworkBranch, NetworkLoad } from "./network.js";
import { type Edge, Reach } from "./reach.js";
import { LEAST_OHM, type Series, series, Way } from "./series.js";
import type { CoachState } from "./state.js";
import { batteryFigures, regulatedFigures } from "./supply-figures.js";
import { conductorCOf, wireResistance } from "./wire-resistance.js";

/** The volts the coach is meant to run on: as recorded, 12 where it is not. */
export const nominalVOf = (index: CoachIndex): number => index.record.coach.nominalV ?? 12;

const isSwitchedOn = (kind: string, state: CoachState): boolean =>
  kind === "battery" ||
  (kind === "charger" && state.chargerOn === true) ||
  (kind === "alternator" && state.engineOn === true);

/**
 * The coach in one state as a network. Batteries are always in; chargers and the alternator as the state says; solar is left out, since the sun
 * cannot be counted on. Missing where no supply can feed anything.
 */
export function buildCoach(index: CoachIndex, state: CoachState): Outcome<CoachNetwork> {
  const policy = policyOf(index.record);
  const nominalV = nominalVOf(index);
  const finder = new WayFinder(index, policy);
  const branches: NetworkBranch[] = [];
  const ohmSpan: Span[] = [];
  const emfSpan: (Span | undefined)[] = [];
  const loads: NetworkLoad[] = [];
  const loadBounds: LoadBounds[] = [];
  const leftOut = new Set<string>();
  const nodeOf = new Map<string, number>();
  let nodeCount = 0;
  for (const id of index.nodes.keys()) nodeOf.set(id, nodeCount++);
  const recordNodes = nodeCount;
  const newNode = () => nodeCount++;
  const branch = (from: number, to: number, way: Pick<Series, "ohm" | "span">, emfV?: number, emf?: Span): number => {
    branches.push({ from, to, resistanceOhm: way.ohm, ...(emfV === undefined ? {} : { emfV }) });
    ohmSpan.push(way.span);
    emfSpan.push(emf);
    return branches.length - 1;
  };
  const load = (from: number, to: number, model: LoadModel, least: LoadModel, most: LoadModel): number => {
    loads.push({ from, to, model });
    loadBounds.push({ least, most });
    return loads.length - 1;
  };

  // Cables.
  const edges: Edge[] = [];
  const at: number[][] = Array.from({ length: recordNodes }, () => []);
  const cables: CableWiring[] = [];
  for (const cable of index.cables.values()) {
    const path = index.pathOf("cables", cable.id);
    const from = nodeOf.get(cable.from);
    const to = nodeOf.get(cable.to);
    const way = new Way();
    const conductorC = conductorCOf(cable, policy, (p) => index.places.get(p)?.zone);
    const kind = cable.kind ?? "wire";
    const rail = index.nodes.get(cable.to)?.rail ?? index.nodes.get(cable.from)?.rail;
    const isReturn =
      rail === "return" ||
      index.nodes.get(cable.from)?.kind === "ground" ||
      index.nodes.get(cable.to)?.kind === "ground";
    const place = kind === "chassis" || kind === "strap" ? "ground" : isReturn ? "return" : "feeder";
    if (kind === "chassis" && cable.resistanceOhm === undefined) way.needs.push(`${path}.resistanceOhm`);
    else way.add(place, cable.id, wireResistance(cable, policy, conductorC, `${path}.`), `${path}.lengthM`);
    if (cable.protection !== undefined) {
      const fuse = fuseResistance(cable.protection);
      if (fuse.assumedFrom)
        finder.assumed.push({ path: `${path}.protection.resistanceOhm`, value: fuse.ohm, source: fuse.assumedFrom });
      way.put("fuse", cable.id, fuse.ohm, fuse.span);
    }
    const total = series(way.isKnown ? way.pieces : []);
    const isOpen = cable.disconnect?.isClosed === false || from === undefined || to === undefined || from === to;
    const edge = isOpen ? -1 : edges.length;
    if (!isOpen) {
      for (const need of way.needs) leftOut.add(need);
      edges.push({ a: from, b: to, isKnown: way.isKnown, needs: way.needs });
      at[from]!.push(edge);
      at[to]!.push(edge);
    }
    cables.push({ cable, path, branch: isOpen ? -1 : branch(from, to, total), edge, series: total, needs: way.needs });
  }

  // Supplies, batteries first.
  const wanted = [...index.supplies.values()].filter((supply) => isSwitchedOn(supply.kind, state));
  const ordered = [
    ...wanted.filter((supply) => supply.kind === "battery"),
    ...wanted.filter((supply) => supply.kind !== "battery"),
  ];
  const supplies: SupplyWiring[] = [];
  const supplyNeeds: string[] = [];
  for (const supply of ordered) {
    const path = index.pathOf("supplies", supply.id);
    const positive = supply.node === undefined ? undefined : nodeOf.get(supply.node);
    const negative = supply.returnNode === undefined ? undefined : nodeOf.get(supply.returnNode);
    const needs: string[] = [];
    if (positive === undefined) needs.push(`${path}.node`);
    if (negative === undefined) needs.push(`${path}.returnNode`);
    let supplyBranch = -1;
    let supplyLoad = -1;
    if (positive !== undefined && negative !== undefined) {
      if (supply.kind === "battery") {
        const found = batteryFigures(supply, state, nominalV, path);
        finder.assumed.push(...found.assumed);
        const span = { lo: Math.max(LEAST_OHM, found.ohm.span.lo), hi: Math.max(LEAST_OHM, found.ohm.span.hi) };
        supplyBranch = branch(
          negative,
          positive,
          { ohm: Math.max(LEAST_OHM, found.ohm.value), span },
          found.emf.value,
          found.emf.span,
        );
      } else {
        const found = regulatedFigures(supply, path);
        if (found.kind === "known") {
          finder.assumed.push(...found.value.assumed);
          supplyLoad = load(positive, negative, found.value.nominal, found.value.strongest, found.value.weakest);
        } else if (found.kind === "missing") needs.push(...found.needs);
      }
    }
    for (const need of needs) leftOut.add(need);
    supplyNeeds.push(...needs);
    if (positive === undefined || negative === undefined || (supplyBranch < 0 && supplyLoad < 0)) continue;
    const toFeeds = new Reach(positive, recordNodes, edges, at);
    const toReturns = new Reach(negative, recordNodes, edges, at);
    supplies.push({ supply, path, positive, negative, branch: supplyBranch, load: supplyLoad, toFeeds, toReturns });
  }
  const first = supplies[0];
  if (first === undefined) return missing(...(supplyNeeds.length > 0 ? supplyNeeds : ["supplies"]));
  const reference = first.negative;

  // What is not known of a cable inside a loop is not known for anything.
  const loopNeeds = edges
    .filter((edge, e) => !edge.isKnown && !isOnTree(supplies, e, edge))
    .flatMap((edge) => edge.needs);

  const circuits: CircuitWiring[] = [];
  const isOn = (circuit: Circuit) => state.on.has(circuit.id) && (state.dutyRatio?.get(circuit.id) ?? 1) > 0;
  for (const circuit of index.circuits.values()) {
    if (!isOn(circuit)) continue;
    const path = index.pathOf("circuits", circuit.id);
    const ways = finder.waysOf(circuit, path);
    const feedNode = ways.feedId === undefined ? -1 : (nodeOf.get(ways.feedId) ?? -1);
    const returnNode = ways.returnId === undefined ? -1 : (nodeOf.get(ways.returnId) ?? -1);
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
    const joinedReturn = returnNode >= 0 ? returnNode : reference;
    wayNeeds.push(...ways.entry.needs, ...ways.out.needs, ...ways.back.needs);
    let start = joinedFeed;
    let entryBranch = -1;
    let entry: Series | undefined;
    const splice = ways.spliceId === undefined ? undefined : nodeOf.get(ways.spliceId);
    if (splice !== undefined) {
      entry = series(ways.entry.pieces);
      entryBranch = branch(start, splice, entry);
      start = splice;
    } else if (ways.spliceId !== undefined) wayNeeds.push(`nodes/${ways.spliceId}`);
    const out = ways.out.isKnown ? series(ways.out.pieces) : undefined;
    const farNode = out ? newNode() : start;
    const outBranch = out ? branch(start, farNode, out) : -1;
    const back = ways.back.isKnown ? series(ways.back.pieces) : undefined;
    const commonNode = back ? newNode() : joinedReturn;
    const returnBranch = back ? branch(commonNode, joinedReturn, back) : -1;
    const currentNeeds: string[] = [];
    if ((circuit.loads ?? []).length === 0 && !circuit.isSpare) currentNeeds.push(`${path}.loads`);
    const wired: LoadWiring[] = [];
    for (const [n, id] of (circuit.loads ?? []).entries()) {
      const found = index.loads.get(id);
      if (found === undefined) {
        currentNeeds.push(`${path}.loads[${n}]`);
        continue;
      }
      const loadPath = index.pathOf("loads", id);
      const figures = loadFiguresOf(found, nominalV, loadPath, state.stalled?.has(id));
      const tailWay = finder.tailOf(found, loadPath);
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
      finder.assumed.push(...figures.value.assumed);
      const tail = tailWay?.isKnown ? series(tailWay.pieces) : undefined;
      const positive = tail ? newNode() : farNode;
      const tailBranch = tail ? branch(farNode, positive, tail) : -1;
      const { nominal, least, most } = figures.value;
      const networkLoad = load(positive, commonNode, nominal, least, most);
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
    for (const need of [...wayNeeds, ...currentNeeds, ...wired.flatMap((one) => one.tailNeeds)]) leftOut.add(need);
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

  // Each module's own electronics.
  const modules: ModuleWiring[] = [];
  for (const module of index.modules.values()) {
    const path = index.pathOf("modules", module.id);
    const kind = module.kind === undefined ? undefined : index.moduleKinds.get(module.kind);
    const feed = module.feedNode === undefined ? undefined : nodeOf.get(module.feedNode);
    const stated = kind?.quiescentA;
    const own = CLASS_FIGURES.quiescentA;
    if (stated === undefined)
      finder.assumed.push({
        path: kind ? `${index.pathOf("moduleKinds", kind.id)}.quiescentA` : `${path}.kind`,
        value: own.value,
        source: own.source,
      });
    const draw = stated === undefined ? own.value : figureValue(stated);
    const span = stated === undefined ? own.span : spanOf(stated, "current");
    const kneeV = CLASS_FIGURES.kneeRatio.value * nominalV;
    const model = (currentA: number): LoadModel => ({ kind: "current", currentA: Math.max(0, currentA), kneeV });
    const back = module.returnNode === undefined ? undefined : nodeOf.get(module.returnNode);
    modules.push({
      module,
      path,
      quiescentLoad: load(feed ?? first.positive, back ?? reference, model(draw), model(span.lo), model(span.hi)),
    });
  }

  return known({
    index,
    policy,
    state,
    nominalV,
    network: { nodeCount, reference, branches, loads },
    ohmSpan,
    emfSpan,
    loadBounds,
    nodeOf,
    supplies,
    cables,
    edges,
    cableOfEdge: cables.filter((one) => one.edge >= 0),
    circuits,
    modules,
    leftOut: [...leftOut].sort(),
    assumed: finder.assumed,
  });
}

/** Is this cable the way by which some supply reaches one of its ends? */
const isOnTree = (supplies: readonly SupplyWiring[], e: number, edge: Edge): boolean =>
  supplies.some((s) => [s.toFeeds, s.toReturns].some((reach) => reach.by[edge.a] === e || reach.by[edge.b] === e)) ||
  supplies.every((s) =>
    [s.toFeeds, s.toReturns].every((reach) => !reach.isReached[edge.a] && !reach.isReached[edge.b]),
  );
