import { CLASS_FIGURES, type CoachNetwork, type Network, type NetworkBranch, solveNetwork } from "../network/index.js";
import { known, type Outcome, refused, type Span, spanOf } from "../quantity/index.js";
import type { Supply } from "../record/index.js";

/** The coach's batteries and cables, seen from two of its nodes with everything else off: volts behind a resistance. */
export interface FaultSource {
  readonly emfV: number;
  readonly emfSpan: Span;
  readonly ohm: number;
  readonly ohmSpan: Span;
  /** What chargers, alternator and solar may add to the batteries' current, at most, A. */
  readonly addedMaxA: number;
  /** The same fault with every supply on as if it had no limit: the least resistance and the highest volts there can be. */
  readonly charged: { readonly emfV: number; readonly ohm: number };
}

type Corner = "nominal" | "least" | "most" | "charged";

const seen = new WeakMap<CoachNetwork, Map<string, Outcome<FaultSource>>>();

/** What the supplies other than batteries can give at most, all together: they hold their rated current whatever the fault. */
function addedMaxA(coach: CoachNetwork): number {
  let sum = 0;
  for (const supply of coach.index.supplies.values())
    if (supply.kind !== "battery")
      sum += supply.ratedA === undefined ? Number.POSITIVE_INFINITY : spanOf(supply.ratedA, "rating").hi;
  return sum;
}

/** A supply whose output nobody read is taken to hold the coach at no more than this over its nominal volts. Common practice, no source. */
const CHARGED_RATIO = 1.25;

/** The highest volts at which this supply holds the coach. */
const chargedV = (supply: Supply, nominalV: number): number =>
  supply.outputV === undefined ? CHARGED_RATIO * nominalV : spanOf(supply.outputV, "voltage").hi;

/** Highest volts at which a charger, alternator or solar feed holds the coach; 0 where there is none. */
export const chargedMaxV = (coach: CoachNetwork): number =>
  Math.max(
    0,
    ...[...coach.index.supplies.values()].flatMap((supply) =>
      supply.kind === "battery" ? [] : [chargedV(supply, coach.nominalV)],
    ),
  );

/** Chargers and the like as if they had no limit: never less than they give. */
function chargerBranches(coach: CoachNetwork, emfV: number): NetworkBranch[] {
  const branches: NetworkBranch[] = [];
  for (const supply of coach.index.supplies.values()) {
    const positive = coach.nodeOf.get(supply.node ?? "");
    const negative = coach.nodeOf.get(supply.returnNode ?? "");
    if (supply.kind === "battery" || positive === undefined || negative === undefined || positive === negative)
      continue;
    const stated = supply.internalResistanceOhm;
    const ohm =
      stated !== undefined
        ? spanOf(stated, "resistance").lo
        : supply.ratedA === undefined
          ? 0
          : (CLASS_FIGURES.outputDroopRatio.span.lo * emfV) / spanOf(supply.ratedA, "rating").hi;
    branches.push({ from: negative, to: positive, resistanceOhm: Math.max(1e-6, ohm), emfV });
  }
  return branches;
}

/**
 * Cables and batteries in one corner of their figures. Sources that differ are taken alike at the strongest or the weakest of them: then more resistance
 * anywhere can only mean less current, and the corner bounds it.
 */
function coreBranches(coach: CoachNetwork, corner: Corner): NetworkBranch[] {
  const { branches } = coach.network;
  const spans = coach.supplies.flatMap((supply) => coach.emfSpan[supply.branch] ?? []);
  const isMost = corner === "most" || corner === "charged";
  const strongestV = Math.max(...spans.map((span) => span.hi), corner === "charged" ? chargedMaxV(coach) : 0);
  const weakestV = Math.min(...spans.map((span) => span.lo));
  const ohmOf = (b: number): number =>
    corner === "nominal" ? branches[b]!.resistanceOhm : isMost ? coach.ohmSpan[b]!.lo : coach.ohmSpan[b]!.hi;
  const cables = coach.cables.flatMap(({ branch }) =>
    branch < 0 ? [] : [{ ...branches[branch]!, resistanceOhm: ohmOf(branch) }],
  );
  const batteries = coach.supplies.flatMap(({ branch }) => {
    if (branch < 0) return [];
    const own = branches[branch]!;
    const emfV = corner === "nominal" ? (own.emfV ?? 0) : isMost ? strongestV : weakestV;
    return [{ ...own, resistanceOhm: ohmOf(branch), emfV }];
  });
  return [...cables, ...batteries, ...(corner === "charged" ? chargerBranches(coach, strongestV) : [])];
}

/** Volts that stand for none in the weakest corner. */
const LEAST_V = 1e-3;

/** A current this large is taken from one node at a time to see by how much the volts of all others fall. */
const PROBE_A = 10;

/** The core in one corner: volts at rest, and by node the fall of all volts for each ampere taken there and given back at battery negative. */
class Core {
  private readonly network: Network;
  private readonly openV: Float64Array | undefined;
  private readonly fallen = new Map<number, Float64Array | undefined>();

  constructor(
    private readonly coach: CoachNetwork,
    corner: Corner,
  ) {
    this.network = {
      nodeCount: coach.nodeOf.size,
      reference: coach.network.reference,
      branches: coreBranches(coach, corner),
      loads: [],
    };
    this.openV = this.solve([]);
  }

  private solve(loads: Network["loads"]): Float64Array | undefined {
    const found = solveNetwork({ ...this.network, loads });
    return found.kind === "known" ? found.value.nodeV : undefined;
  }

  private drawn(from: number, to: number): Float64Array | undefined {
    const open = this.openV;
    const v = this.solve([{ from, to, model: { kind: "current", currentA: PROBE_A, kneeV: 1e-3 } }]);
    return v && open ? v.map((volts, n) => (open[n]! - volts) / PROBE_A) : undefined;
  }

  /** A node near battery negative has no volts to draw from: the ampere comes from a battery's positive, whose own fall is taken off again. */
  private fall(node: number): Float64Array | undefined {
    if (this.fallen.has(node)) return this.fallen.get(node);
    const { reference } = this.network;
    const positive = this.coach.supplies[0]!.positive;
    let found: Float64Array | undefined;
    if (node === reference) found = new Float64Array(this.network.nodeCount);
    else if (node === positive || (this.openV?.[node] ?? 0) > (this.openV?.[positive] ?? 0) / 2)
      found = this.drawn(node, reference);
    else {
      const ofPositive = this.fall(positive);
      const both = this.drawn(positive, node);
      found = both && ofPositive ? both.map((each, n) => ofPositive[n]! - each) : undefined;
    }
    this.fallen.set(node, found);
    return found;
  }

  /** Volts at rest between two nodes and the resistance behind them; undefined where nothing feeds them. */
  between(from: number, to: number): { readonly emfV: number; readonly ohm: number } | undefined {
    if (from === to || this.openV === undefined) return undefined;
    const emfV = this.openV[from]! - this.openV[to]!;
    const [ofFrom, ofTo] = [this.fall(from), this.fall(to)];
    if (!(emfV > 0.1) || !ofFrom || !ofTo) return undefined;
    return { emfV, ohm: Math.max(0, ofFrom[from]! - ofFrom[to]! - ofTo[from]! + ofTo[to]!) };
  }
}

const CORES = new WeakMap<CoachNetwork, Map<Corner, Core>>();

function cornerOf(coach: CoachNetwork, from: number, to: number, corner: Corner): ReturnType<Core["between"]> {
  const cores = CORES.get(coach) ?? new Map<Corner, Core>();
  CORES.set(coach, cores);
  const core = cores.get(corner) ?? new Core(coach, corner);
  cores.set(corner, core);
  return core.between(from, to);
}

/**
 * What stands behind a short between these two nodes of the coach? Refused with `not-fed` where no battery reaches
 * both. For one battery the spans are its exact corners; for several an enclosure.
 */
export function faultSourceOf(coach: CoachNetwork, from: number, to: number): Outcome<FaultSource> {
  const cache = seen.get(coach) ?? new Map<string, Outcome<FaultSource>>();
  seen.set(coach, cache);
  const key = `${from} ${to}`;
  const found = cache.get(key);
  if (found) return found;
  const nominal = cornerOf(coach, from, to, "nominal");
  // A battery so doubted that its volts may be none still feeds: hardly any current at least, not no answer.
  const least = cornerOf(coach, from, to, "least") ?? (nominal && { emfV: LEAST_V, ohm: nominal.ohm });
  const most = cornerOf(coach, from, to, "most");
  const charged = addedMaxA(coach) === 0 ? most : cornerOf(coach, from, to, "charged");
  const made: Outcome<FaultSource> =
    nominal && least && most && charged
      ? known({
          emfV: nominal.emfV,
          emfSpan: { lo: Math.min(least.emfV, nominal.emfV), hi: Math.max(most.emfV, nominal.emfV) },
          ohm: nominal.ohm,
          ohmSpan: { lo: Math.min(most.ohm, nominal.ohm), hi: Math.max(least.ohm, nominal.ohm) },
          addedMaxA: addedMaxA(coach),
          charged,
        })
      : refused("not-fed", "no battery reaches both ends of this fault");
  cache.set(key, made);
  return made;
}

/** The current into a short behind this much more resistance, A: at least on batteries alone, at most with every other supply giving all it can. */
export function shortCurrent(
  source: FaultSource,
  ohm: number,
  span: Span,
): { readonly value: number; readonly span: Span } {
  const over = (emfV: number, all: number) => emfV / Math.max(1e-6, all);
  const value = over(source.emfV, source.ohm + ohm);
  const most = Math.min(
    over(source.emfSpan.hi, source.ohmSpan.lo + span.lo) + source.addedMaxA,
    over(source.charged.emfV, source.charged.ohm + span.lo),
  );
  return {
    value,
    span: { lo: Math.min(value, over(source.emfSpan.lo, source.ohmSpan.hi + span.hi)), hi: Math.max(value, most) },
  };
}
