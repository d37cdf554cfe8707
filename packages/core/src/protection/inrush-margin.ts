import type { Comparison } from "../quantity/index.js";
import type { FuseGates } from "./fuse-gates.js";
import type { Inrush } from "./inrush.js";
import type { InrushCurve } from "./inrush-curve.js";
import { leastOpeningA } from "./opening-times.js";

/** How close a start comes to the soonest gate. */
export interface InrushMargin {
  /** The least, over all times, of the current that no fuse opens at within that time, over the current drawn until then. Above 1: it passes. */
  readonly ratio: number;
  /** Both in A: what no fuse opens at within that time, and what was drawn until then (root mean square, or the current itself where that is more). */
  readonly allowedA: number;
  readonly drawnA: number;
  /** The same as joule integrals: what the fuse stands by then over what was let through. */
  readonly jouleRatio: number;
  /** When it comes closest, s after switching on. */
  readonly atS: number;
}

/**
 * Does the quickest fuse of this family and rating let a start pass? At every moment the root mean square of the current since switching on, and the
 * current itself, against the least current at which some such fuse opens within that time.
 */
export function inrushMargin(curve: InrushCurve, fuse: FuseGates): InrushMargin {
  const none = Number.POSITIVE_INFINITY;
  const bendsS = fuse.sets.flatMap((set) => set.soonest.points.map(([, timeS]) => timeS)).sort((a, b) => a - b);
  let worst: InrushMargin = { ratio: none, allowedA: none, drawnA: 0, jouleRatio: none, atS: 0 };
  const look = (atS: number, currentA: number, jouleA2s: number): void => {
    const rmsA = Math.sqrt(jouleA2s / atS);
    const drawnA = Math.max(rmsA, currentA);
    if (!(drawnA > 0)) return;
    const allowedA = leastOpeningA(fuse, atS);
    const ratio = allowedA / drawnA;
    if (ratio < worst.ratio) worst = { ratio, allowedA, drawnA, jouleRatio: (allowedA / rmsA) ** 2, atS };
  };
  let bend = 0;
  for (let i = 1; i < curve.timeS.length; i++) {
    const [fromS, toS] = [curve.timeS[i - 1]!, curve.timeS[i]!];
    const [fromA, toA] = [curve.currentA[i - 1]!, curve.currentA[i]!];
    // Where the gates bend a start may come closest, between two steps: straight current, its square summed exactly.
    for (; bend < bendsS.length && bendsS[bend]! < toS; bend++) {
      const atS = bendsS[bend]!;
      if (atS <= fromS) continue;
      const nowA = fromA + ((toA - fromA) * (atS - fromS)) / (toS - fromS);
      const moreA2s = ((atS - fromS) * (fromA * fromA + fromA * nowA + nowA * nowA)) / 3;
      look(atS, nowA, curve.jouleA2s[i - 1]! + moreA2s);
    }
    look(toS, toA, curve.jouleA2s[i]!);
  }
  return worst;
}

export interface InrushVerdict {
  readonly verdict: Comparison;
  /** Its gates say how soon it may open at such currents; where they do not, nothing can be said to fail. */
  readonly isTold: boolean;
  readonly nominal: InrushMargin;
  readonly least: InrushMargin;
  readonly most: InrushMargin;
}

/** The start against the soonest gate over all that the figures allow: `holds` where even the fiercest passes, `fails` where even the mildest does not. */
export function inrushVerdict(inrush: Inrush, fuse: FuseGates): InrushVerdict {
  const nominal = inrushMargin(inrush.curve, fuse);
  const least = inrushMargin(inrush.least, fuse);
  const most = inrushMargin(inrush.most, fuse);
  const ratios = [nominal, least, most].map((margin) => margin.ratio);
  const isTold = fuse.sets.every((set) => set.soonest.isHeld);
  const verdict = Math.min(...ratios) > 1 ? "holds" : isTold && Math.max(...ratios) <= 1 ? "fails" : "open";
  return { verdict, isTold, nominal, least, most };
}
