import { buildCoach, type CoachNetwork, type CoachSpans, type Spanned } from "../network/index.js";
import { known, missing, type Outcome, refused, spanOf } from "../quantity/index.js";
import type { CoachIndex } from "../record/index.js";

export interface BusCurrent {
  readonly nominal: number;
  readonly span: { readonly lo: number; readonly hi: number };
}

/** The most that may run into this battery from stronger supplies, A. */
function mostCharged(coach: CoachNetwork, branch: number, strongestV: number): number {
  const own = coach.emfSpan[branch];
  return own === undefined ? 0 : Math.max(0, strongestV - own.lo) / coach.ohmSpan[branch]!.lo;
}

/** No point of the coach can stand above the strongest of its supplies. */
function strongestOf(index: CoachIndex, coach: CoachNetwork): number {
  const all = coach.supplies.map(({ supply, branch }) => {
    const own = branch >= 0 ? coach.emfSpan[branch] : undefined;
    const set = index.supplies.get(supply.id)?.outputV;
    return own?.hi ?? (set === undefined ? 0 : spanOf(set, "voltage").hi);
  });
  return Math.max(0, ...all);
}

/**
 * What runs through this bar or stud, A, in a solved state? Half of all currents that meet there, since what comes in goes out. Guaranteed: with one
 * supply in the coach it gives what the rest takes; with several, those at this node may also feed each other, up to what their volts and
 * resistances allow. Missing where any current is; refused as `buildCoach`.
 */
export function busCurrentOf(index: CoachIndex, spans: CoachSpans, node: string): Outcome<BusCurrent> {
  const needs: string[] = [];
  let nominal = 0;
  let lo = 0;
  let hi = 0;
  let greatestLo = 0;
  const meet = (found: Outcome<Spanned> | undefined) => {
    if (found === undefined) return;
    if (found.kind === "missing") needs.push(...found.needs);
    if (found.kind !== "known") return;
    nominal += Math.abs(found.value.nominal);
    lo += found.value.span.lo;
    hi += found.value.span.hi;
    greatestLo = Math.max(greatestLo, found.value.span.lo);
  };
  for (const cable of index.cables.values())
    if (cable.from === node || cable.to === node) meet(spans.cableA.get(cable.id));
  for (const module of index.modules.values()) if (module.feedNode === node) meet(spans.moduleA.get(module.id));
  for (const circuit of index.circuits.values()) {
    const isFed = circuit.module === undefined && (circuit.out?.node ?? circuit.fusePosition?.node) === node;
    if (isFed || circuit.return?.node === node) meet(spans.circuitA.get(circuit.id));
  }
  if (needs.length > 0) return missing(...new Set(needs));
  const here = [...index.supplies.values()].filter((supply) => supply.node === node || supply.returnNode === node);
  if (here.length === 0) return known({ nominal: nominal / 2, span: { lo: lo / 2, hi: hi / 2 } });
  for (const supply of here) nominal += Math.abs(spans.nominal.supplies.get(supply.id)?.currentA ?? 0);
  if (spans.nominal.supplies.size <= 1) return known({ nominal: nominal / 2, span: { lo, hi } });
  const built = buildCoach(index, spans.state);
  if (built.kind !== "known") return built.kind === "refused" ? refused(built.code, built.because) : built;
  const coach = built.value;
  const strongestV = strongestOf(index, coach);
  const ids = new Set(here.map((supply) => supply.id));
  // What the supplies here give together is what the rest takes; what one takes from another here comes on top of that.
  const charged =
    here.length < 2 ? [] : coach.supplies.filter(({ supply, branch }) => ids.has(supply.id) && branch >= 0);
  const between = charged.reduce((sum, { branch }) => sum + mostCharged(coach, branch, strongestV), 0);
  return known({ nominal: nominal / 2, span: { lo: Math.max(lo / 2, greatestLo), hi: hi + between } });
}
