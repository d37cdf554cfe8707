import type { Comparison } from "../quantity/index.js";
import type { FuseGates } from "./fuse-gates.js";
import type { Inrush } from "./inrush.js";
import type { InrushCurve } from "./inrush-curve.js";
import { leastOpeningA } from "./opening-times.js";

/** How close a start comes to the soonest gate. */
export interface InrushMargin {
  /** The least, over all times, of the current that no fuse opens at within that time, over the current drawn until then. Above 1: it passes. */
  readonly ratio: number;
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
  let worst: InrushMargin = { ratio: Number.POSITIVE_INFINITY, jouleRatio: Number.POSITIVE_INFINITY, atS: 0 };
  for (let i = 1; i < curve.timeS.length; i++) {
    const atS = curve.timeS[i]!;
    const allowedA = leastOpeningA(fuse, atS);
    const rmsA = Math.sqrt(curve.jouleA2s[i]! / atS);
    const drawnA = Math.max(rmsA, curve.currentA[i]!);
    if (!(drawnA > 0)) continue;
    const ratio = allowedA / drawnA;
    if (ratio < worst.ratio) worst = { ratio, jouleRatio: (allowedA / rmsA) ** 2, atS };
  }
  return worst;
}

export interface InrushVerdict {
  readonly verdict: Comparison;
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
  const verdict = Math.min(...ratios) > 1 ? "holds" : Math.max(...ratios) <= 1 ? "fails" : "open";
  return { verdict, nominal, least, most };
}
