import { type Figure, figureValue, type Span, spanOf } from "../../quantity/index.js";
import { type FullPolicy, textValue } from "../../record/index.js";
import { COPPER_OHM_MM2_PER_M_20C } from "../../tables/index.js";
import type { ConductorFigures, ConductorSize } from "../conductor-size.js";
import type { OhmDraw } from "./ohm-draw.js";
import type { UncertainInput } from "./uncertain-input.js";

/** What `wireResistance` made of a conductor: nominal and least and most resistance of each metre at 20 C where a table gives it, else its copper and lay. */
export interface CopperFigures {
  readonly area: { readonly nominal: number; readonly span: Span };
  readonly lay?: { readonly nominal: number; readonly span: Span };
}

/** The plain copper that measures this much per metre at 20 C, mm2. */
export const copperOfOhmPerM = (ohmPerM: number): number => COPPER_OHM_MM2_PER_M_20C / ohmPerM;

/** Wire of one gauge and insulation comes off one reel: its copper and lay are the same all over the coach. A section that was measured is known by itself. */
function reelOf(run: ConductorFigures): string | undefined {
  const insulation = run.insulationC === undefined ? "?" : figureValue(run.insulationC);
  if (run.sectionMm2 === undefined)
    return run.gauge === undefined
      ? undefined
      : `reel ${textValue(run.gauge).trim().toLowerCase().replace(/\s+/g, " ")} ${insulation}`;
  const isMeasured = typeof run.sectionMm2 !== "number" && run.sectionMm2.basis === "measured";
  return isMeasured ? undefined : `reel ${figureValue(run.sectionMm2)} mm2 ${insulation}`;
}

/** A conductor's resistance as a draw of its length, its copper and its lay. */
export function copperDraw(
  run: ConductorFigures & { readonly lengthM: Figure },
  size: ConductorSize,
  conductorC: number,
  policy: Pick<FullPolicy, "ambientC" | "ambientPlusMinusC">,
  path: string,
  { area, lay }: CopperFigures,
): OhmDraw {
  const lengthM = figureValue(run.lengthM);
  const reel = reelOf(run);
  const shared = (aspect: string) => (reel === undefined ? {} : { sharedKey: `${reel}${aspect}` });
  const areaPath = `${path}${size.path}`;
  const input = (of: Omit<UncertainInput, "isAssumed">): UncertainInput => ({ ...of, isAssumed: false });
  return {
    kind: "copper",
    length: input({ path: `${path}lengthM`, kind: "length", nominal: lengthM, span: spanOf(run.lengthM, "length") }),
    area: input({ path: areaPath, kind: "section", ...area, ...shared("") }),
    ...(lay === undefined
      ? {}
      : { lay: input({ path: areaPath, aspect: "lay", kind: "ratio", ...lay, ...shared(" lay") }) }),
    ambient: input({
      path: "policy.ambientC",
      kind: "temperature",
      nominal: policy.ambientC,
      span: {
        lo: policy.ambientC - (policy.ambientPlusMinusC ?? 0),
        hi: policy.ambientC + (policy.ambientPlusMinusC ?? 0),
      },
    }),
    overAmbientK: conductorC - policy.ambientC,
  };
}
