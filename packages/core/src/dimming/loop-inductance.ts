import type { Source, Span } from "../quantity/index.js";

/**
 * Inductance of the loop out and back, henry: two wires side by side have about a microhenry for each metre of run, so nothing to 20 microhenry. From
 * memory, no source. It only lowers and widens a pulse; the heat of a pulse that charges a capacitor through is the same with and without it.
 */
export const LOOP_INDUCTANCE: { readonly spanH: Span; readonly source: Source } = {
  spanH: { lo: 0, hi: 20e-6 },
  source: { id: "class-figure", name: "class figure from memory, no source", how: "memory" },
};

/**
 * Greatest current when `stepV` is put on a resistance, an inductance and a capacitor in a row, A. Without inductance stepV / loopOhm. Series circuit in
 * closed form, with and without ringing.
 */
export function stepPeakA(stepV: number, loopOhm: number, loopH: number, capacitanceF: number): number {
  if (!(loopH > 0)) return stepV / loopOhm;
  const damping = loopOhm / (2 * loopH);
  const ringing = 1 / (loopH * capacitanceF);
  const inside = ringing - damping * damping;
  const share = Math.sqrt(Math.abs(inside)) / damping;
  // Near the border both forms go to the same: the peak at 1 / damping.
  if (share < 1e-6) return stepV / (loopH * damping * Math.E);
  if (inside > 0) {
    const atS = Math.atan(share) / (share * damping);
    return (stepV / (loopH * share * damping)) * Math.exp(-damping * atS) * Math.sin(share * damping * atS);
  }
  const atS = Math.atanh(Math.min(share, 1 - 1e-15)) / (share * damping);
  return (stepV / (loopH * share * damping)) * Math.exp(-damping * atS) * Math.sinh(share * damping * atS);
}
