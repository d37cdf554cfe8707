import { type Comparison, compareSpan, missing, type Outcome, type Span, spanOf } from "../quantity/index.js";
import type { Circuit, CircuitId, CoachIndex, LoadId, ModuleKind, Wish } from "../record/index.js";
import { circuitRatedCurrent } from "./circuit-current.js";
import { type Steadiness, steadyOf } from "./steady.js";
import { type Suitability, type SuitabilityCode, suitabilityOf } from "./suitability.js";

type DimBlock = NonNullable<ModuleKind["dimBlocks"]>[number];

/** One thing that speaks against dimming a block, or a condition for it. `load` is absent where the whole channel is meant. */
export interface BlockReason {
  readonly channel: number;
  readonly circuit?: CircuitId;
  readonly load?: LoadId;
  readonly code: SuitabilityCode | "wished-steady" | "loads-not-listed" | "load-not-in-record" | "channel-not-recorded";
}

export interface BlockLoad {
  readonly load: LoadId;
  readonly suitability: Suitability;
  readonly steady: Steadiness;
}

/** The current in the pulse against the kind's dimmed rating, one circuit. */
export interface DimmedRating {
  readonly currentA: Span;
  readonly ratedDimmedA: Span;
  readonly verdict: Comparison;
}

export interface BlockCircuit {
  readonly circuit: CircuitId;
  readonly channel: number;
  readonly loads: readonly BlockLoad[];
  /** Loads that would dim and loads that must not hang on the same channel. */
  readonly isMixed: boolean;
  readonly rating: Outcome<DimmedRating>;
}

/** May a block of channels be enabled for dimming, judged by what hangs on it; ratings stand beside it. */
export interface BlockSuitability {
  readonly block: string;
  /** By the loads alone. `no`: something on it must stay steady; `unknown`: something on it is not known; `only-if`: see `conditions`. */
  readonly may: Suitability["may"];
  readonly spoiledBy: readonly BlockReason[];
  readonly unknown: readonly BlockReason[];
  readonly conditions: readonly BlockReason[];
  readonly mixed: readonly CircuitId[];
  /** Loads on the block that may dim (conditions included), for counting wishes. */
  readonly dims: readonly LoadId[];
  /** Worst of the circuits: `fails` before `open` before `missing` before `holds`. */
  readonly rating: Comparison | "missing";
  readonly circuits: readonly BlockCircuit[];
}

/**
 * Which loads spoil this dim block, which are unknown, and does the dimmed rating carry the circuits? `circuits`: those of the module (a plan may
 * pass them as they would be); channels outside the block are ignored. `wishes`: the job's, by load id; they win over the loads' own.
 * Refused: `kind-cannot-dim` (a relay kind). Missing: `output`, of a kind that does not say whether it can dim.
 */
export function blockSuitability(
  index: CoachIndex,
  circuits: readonly Circuit[],
  kind: ModuleKind,
  block: DimBlock,
  wishes: ReadonlyMap<string, Wish> | undefined = undefined,
): Outcome<BlockSuitability> {
  if (kind.output === undefined) return missing("output");
  if (kind.output === "relay")
    return { kind: "refused", code: "kind-cannot-dim", because: `${kind.name} switches by relay; it has no PWM` };
  const spoiledBy: BlockReason[] = [];
  const unknown: BlockReason[] = [];
  const conditions: BlockReason[] = [];
  const dims: LoadId[] = [];
  const found: BlockCircuit[] = [];
  for (const channel of block.channels) {
    const here = circuits.filter((circuit) => circuit.channel === channel);
    if (here.length === 0) unknown.push({ channel, code: "channel-not-recorded" });
    for (const circuit of here) {
      const at = { channel, circuit: circuit.id };
      const loads: BlockLoad[] = [];
      if ((circuit.loads ?? []).length === 0 && !circuit.isSpare) unknown.push({ ...at, code: "loads-not-listed" });
      for (const id of circuit.loads ?? []) {
        const load = index.loads.get(id);
        if (!load) {
          unknown.push({ ...at, load: id, code: "load-not-in-record" });
          continue;
        }
        const suitability = suitabilityOf(load);
        const steady = steadyOf(load, wishes?.get(id) ?? load.wish);
        loads.push({ load: id, suitability, steady });
        if (steady.must === "yes") spoiledBy.push({ ...at, load: id, code: steady.code });
        else if (suitability.may === "unknown") unknown.push({ ...at, load: id, code: suitability.code });
        else {
          dims.push(id);
          if (suitability.may === "only-if") conditions.push({ ...at, load: id, code: suitability.code });
        }
      }
      found.push({
        circuit: circuit.id,
        channel,
        loads,
        isMixed:
          loads.some((each) => each.steady.must === "yes") &&
          loads.some((each) => each.steady.must === "no" && each.suitability.may !== "unknown"),
        rating: dimmedRating(index, circuit, kind),
      });
    }
  }
  return {
    kind: "known",
    value: {
      block: block.id,
      may: spoiledBy.length > 0 ? "no" : unknown.length > 0 ? "unknown" : conditions.length > 0 ? "only-if" : "yes",
      spoiledBy,
      unknown,
      conditions,
      mixed: found.filter((each) => each.isMixed).map((each) => each.circuit),
      dims,
      rating: worstRating(found),
      circuits: found,
    },
  };
}

/**
 * Does the kind's dimmed rating carry this circuit? The current in the pulse counts, not the mean: dimming does not lower it.
 * Missing: the kind's `ratedDimmedA` (by path), or the loads' figures.
 */
export function dimmedRating(index: CoachIndex, circuit: Circuit, kind: ModuleKind): Outcome<DimmedRating> {
  const current = circuitRatedCurrent(index, circuit);
  const needs = current.kind === "missing" ? [...current.needs] : [];
  if (kind.ratedDimmedA === undefined) needs.unshift(`${index.pathOf("moduleKinds", kind.id)}.ratedDimmedA`);
  if (needs.length > 0 || kind.ratedDimmedA === undefined) return missing(...needs);
  if (current.kind !== "known") return current;
  const ratedDimmedA = spanOf(kind.ratedDimmedA, "rating");
  const verdict: Comparison =
    compareSpan(current.value, ratedDimmedA.lo, "at-most") === "holds"
      ? "holds"
      : compareSpan(current.value, ratedDimmedA.hi, "at-most") === "fails"
        ? "fails"
        : "open";
  return { kind: "known", value: { currentA: current.value, ratedDimmedA, verdict } };
}

function worstRating(circuits: readonly BlockCircuit[]): Comparison | "missing" {
  const verdicts = circuits.map((each) => (each.rating.kind === "known" ? each.rating.value.verdict : "missing"));
  return (["fails", "open", "missing"] as const).find((verdict) => verdicts.includes(verdict)) ?? "holds";
}
