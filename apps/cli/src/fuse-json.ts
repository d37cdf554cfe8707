import { bendsA, type CircuitProtection, openingTimes } from "@fusebook/core/protection";
import type { Outcome } from "@fusebook/core/quantity";

/** JSON has no infinity: a fuse that need not open has null there. */
const finite = (value: number): number | null => (Number.isFinite(value) ? value : null);

const span = ({ lo, hi }: { readonly lo: number; readonly hi: number }) => ({ lo: finite(lo), hi: finite(hi) });

/** An outcome as it is, its known side made by `make`. */
const told = <T, U>(outcome: Outcome<T>, make: (value: T) => U) =>
  outcome.kind === "known" ? { kind: "known" as const, ...make(outcome.value) } : outcome;

/** One circuit's protection under stable keys (docs/commands.md). */
export function protectionJson(of: CircuitProtection) {
  const { circuit } = of;
  return {
    circuit: circuit.id,
    label: circuit.label ?? null,
    loads: circuit.loads ?? [],
    fuse: told(of.fuse, (fuse) => ({
      type: fuse.type,
      ratedA: fuse.ratedA,
      sources: fuse.sets.map((set) => ({ standard: set.name, ...set.source })),
      gates: bendsA(fuse).map((currentA) => {
        const { soonestS, latestS } = openingTimes(fuse, currentA);
        return { currentA, ratio: currentA / fuse.ratedA, soonestS: finite(soonestS), latestS: finite(latestS) };
      }),
    })),
    load: told(of.loadA, ({ value, span: ends }) => ({ currentA: value, span: span(ends) })),
    start: told(of.inrush, (inrush) => ({
      peakA: inrush.peakA,
      peakSpan: span(inrush.peakSpan),
      steadyA: inrush.steadyA,
      timeConstantS: inrush.timeConstantS,
      jouleA2s: inrush.jouleA2s,
      jouleSpan: span(inrush.jouleSpan),
      assumed: inrush.assumed.map(({ path, value, source }) => ({ path, value, how: source.how })),
    })),
    startPasses: told(of.inrushPasses, ({ verdict, nominal, least, most }) => ({
      verdict,
      atS: nominal.atS,
      allowedA: finite(nominal.allowedA),
      drawnA: nominal.drawnA,
      ratio: finite(nominal.ratio),
      ratioSpan: { lo: finite(Math.min(most.ratio, least.ratio)), hi: finite(Math.max(most.ratio, least.ratio)) },
    })),
    short: told(of.fault, (fault) => ({
      currentA: fault.currentA,
      span: span(fault.span),
      emfV: fault.emfV,
      ohm: fault.ohm,
      parts: fault.parts,
    })),
    ends: told(of.ends, (ends) => ({
      ends: ends.map(({ end, clearing, conductors }) => ({
        at: end.at,
        load: end.loadId ?? null,
        currentA: end.currentA,
        span: span(end.span),
        opens: {
          verdict: clearing.verdict,
          latestS: finite(clearing.latestS),
          latestSpan: span(clearing.span),
          soonestS: finite(clearing.soonestS),
          withinS: clearing.withinS,
        },
        conductors: conductors.map((one) => ({
          part: one.conductor.part,
          id: one.conductor.id,
          path: one.conductor.path,
          verdict: one.verdict,
          limitA2s: one.limitA2s,
          limitSpan: span(one.limitSpan),
          letThroughA2s: finite(one.letThroughA2s),
          letThroughSpan: span(one.letThroughSpan),
          standsS: one.standsS,
        })),
      })),
    })),
    before: of.above.map(({ device, selectivity, distance }) => ({
      cable: device.cable.id,
      ratedA: device.fuse.ratedA ?? null,
      type: device.fuse.type ?? null,
      selectivity: told(selectivity, (found) => ({
        verdict: found.verdict,
        worstRatio: finite(found.worstRatio),
        worstAtA: found.worstAtA,
        fromA: found.fromA,
        uptoA: span(found.uptoA),
      })),
      distance: told(distance, (found) => ({ ...found })),
    })),
    behindFuse: told(of.atFuse, (found) => ({ currentA: found.currentA, span: span(found.span) })),
    interrupt: told(of.interrupt, (found) => ({ ...found })),
    limits: told(of.policies, (rows) => ({
      policies: rows.map(({ policy, runs, distance }) => ({
        policy,
        maxDistanceM: distance.maxM,
        runs: runs.map(({ part, id, path, ampacity, ceiling, fuse }) => ({
          part,
          id,
          path,
          fuse: fuse ?? null,
          ampacity: told(ampacity, (found) => ({
            ampacityA: found.ampacityA,
            span: span(found.span),
            baseA: found.baseA,
            insulationC: found.insulationC,
            ambientC: found.ambientC,
            factors: found.factors,
            source: found.source,
          })),
          device: told(ceiling, (found) => ({ maxA: found.maxA, span: span(found.span), source: found.source })),
        })),
      })),
    })),
  };
}
