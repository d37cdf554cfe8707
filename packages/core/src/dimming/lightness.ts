import { known, type Outcome, refused, type Source } from "../quantity/index.js";
import { sourceOf } from "../tables/index.js";

/** CIE 1976 lightness. Definition opened in both vocabularies (seen). */
export const LIGHTNESS_SOURCE: Source = sourceOf("cie-lstar");

const BRANCH_RATIO = (6 / 29) ** 3;
const LOW_SLOPE = 116 * (841 / 108);

/**
 * How bright does it look, 0 to 100, when the light is `luminanceRatio` of full? CIE 1976 L*: 116 (Y/Yn)^(1/3) - 16 above (6/29)^3, a
 * straight line below. Refused: `ratio-out-of-range` outside 0..1. The lamp at full is taken as the white of the scene, which it is where it
 * is the only light.
 */
export function lightnessOf(luminanceRatio: number): Outcome<number> {
  if (!(luminanceRatio >= 0 && luminanceRatio <= 1))
    return refused("ratio-out-of-range", `a share of full light lies between 0 and 1, got ${luminanceRatio}`);
  return known(luminanceRatio > BRANCH_RATIO ? 116 * Math.cbrt(luminanceRatio) - 16 : LOW_SLOPE * luminanceRatio);
}

/** What share of full light looks this bright? The inverse of `lightnessOf`; `lightness` 0 to 100. Refused: `lightness-out-of-range`. */
export function luminanceRatioOf(lightness: number): Outcome<number> {
  if (!(lightness >= 0 && lightness <= 100))
    return refused("lightness-out-of-range", `lightness lies between 0 and 100, got ${lightness}`);
  return known(lightness > 8 ? ((lightness + 16) / 116) ** 3 : lightness / LOW_SLOPE);
}
