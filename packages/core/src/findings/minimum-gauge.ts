import { conductorSize } from "../network/index.js";
import { gaugeNumber } from "../quantity/index.js";
import { type Cable, type FullPolicy, textValue, type WireRun } from "../record/index.js";
import { saeAreaMm2 } from "../tables/index.js";
import { against } from "./against.js";
import type { Said } from "./define-rule.js";

/**
 * Is this wire at least of this gauge? A written gauge is compared by its number; a section in mm2 by the least copper that the gauge may hold (SAE).
 * Undefined where the record does not say how thick it is.
 */
export function atLeastGauge(
  run: WireRun | Cable,
  policy: FullPolicy,
  least: string,
): (Pick<Said, "verdict" | "limit"> & { parameters: Record<string, string | number> }) | undefined {
  const size = conductorSize(run, policy);
  const floor = saeAreaMm2(least);
  if (size.kind !== "known" || floor.kind !== "known") return undefined;
  const { areaMm2, span, gauge } = size.value;
  const told = against({ value: areaMm2, span }, { value: floor.value, unit: "mm2", sense: "at-least" });
  const number = gauge === undefined ? undefined : gaugeNumber(gauge);
  const leastNumber = gaugeNumber(least);
  const written = run.sectionMm2 === undefined && run.gauge !== undefined ? textValue(run.gauge) : "";
  return {
    ...told,
    verdict:
      number === undefined || leastNumber === undefined ? told.verdict : number <= leastNumber ? "holds" : "fails",
    parameters: { ...told.parameters, gauge: written, minimum: `${least} AWG` },
  };
}
