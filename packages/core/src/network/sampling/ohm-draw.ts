import { copperOhmMm2PerM } from "../../tables/index.js";
import type { UncertainInput } from "./uncertain-input.js";

/** How a resistance follows from the figures it is made of: one figure, or copper by its length, area and lay. */
export type OhmDraw =
  | { readonly kind: "figure"; readonly ohm: UncertainInput }
  | {
      readonly kind: "copper";
      readonly length: UncertainInput;
      /** Of plain copper, mm2. */
      readonly area: UncertainInput;
      /** Absent where the area already counts it. */
      readonly lay?: UncertainInput;
      /** Of the coach: all zones are warmer or cooler together. */
      readonly ambient: UncertainInput;
      /** How much warmer the conductor's zone is taken than that, K. */
      readonly overAmbientK: number;
    };

/** A resistance from the figures a sample gives it, ohm: the same equation as `wireResistance`. */
export const ohmOfDraw = (draw: OhmDraw, drawn: (input: UncertainInput) => number): number =>
  draw.kind === "figure"
    ? Math.max(0, drawn(draw.ohm))
    : (copperOhmMm2PerM(drawn(draw.ambient) + draw.overAmbientK) *
        drawn(draw.length) *
        (draw.lay === undefined ? 1 : drawn(draw.lay))) /
      drawn(draw.area);
