import type { CoachSpans, Spanned } from "../network/index.js";
import { known, missing, type Outcome } from "../quantity/index.js";
import type { CoachIndex } from "../record/index.js";

export interface BusCurrent {
  readonly nominal: number;
  readonly span: { readonly lo: number; readonly hi: number };
}

/**
 * What runs through this bar or stud, A, in a solved state? Half of all currents that meet there, since what comes in goes out. Missing where any of them is.
 */
export function busCurrentOf(index: CoachIndex, spans: CoachSpans, node: string): Outcome<BusCurrent> {
  const needs: string[] = [];
  let nominal = 0;
  let lo = 0;
  let hi = 0;
  const meet = (found: Outcome<Spanned> | undefined) => {
    if (found === undefined) return;
    if (found.kind === "missing") needs.push(...found.needs);
    if (found.kind !== "known") return;
    nominal += Math.abs(found.value.nominal);
    lo += found.value.span.lo;
    hi += found.value.span.hi;
  };
  for (const cable of index.cables.values())
    if (cable.from === node || cable.to === node) meet(spans.cableA.get(cable.id));
  for (const module of index.modules.values()) if (module.feedNode === node) meet(spans.moduleA.get(module.id));
  for (const circuit of index.circuits.values()) {
    const isFed = circuit.module === undefined && (circuit.out?.node ?? circuit.fusePosition?.node) === node;
    if (isFed || circuit.return?.node === node) meet(spans.circuitA.get(circuit.id));
  }
  if (needs.length > 0) return missing(...new Set(needs));
  for (const supply of index.supplies.values()) {
    if (supply.node !== node && supply.returnNode !== node) continue;
    const given = Math.abs(spans.nominal.supplies.get(supply.id)?.currentA ?? 0);
    // A supply gives what the rest takes: its current closes the sum within the same doubt.
    const share = nominal > 0 ? given / nominal : 0;
    nominal += given;
    lo += share * lo;
    hi += share * hi;
  }
  return known({ nominal: nominal / 2, span: { lo: lo / 2, hi: hi / 2 } });
}
