import { figureValue } from "@fusebook/core/quantity";
import type { CoachIndex, ModuleId } from "@fusebook/core/record";
import type { LabelStrip } from "../labels/strip.js";
import { feedsOf, moduleName } from "./names.js";

/** What is needed before a strip can be drawn at true size. */
export interface StripWant {
  readonly module: string;
  readonly why: string;
}

/** A fuse label strip for each module whose kind states its label pitch and height; the others are named with what is missing. */
export function stripsOf(
  index: CoachIndex,
  only?: ReadonlySet<ModuleId>,
): { strips: LabelStrip[]; wants: StripWant[] } {
  const strips: LabelStrip[] = [];
  const wants: StripWant[] = [];
  for (const module of index.record.modules ?? []) {
    if (only !== undefined && !only.has(module.id)) continue;
    const title = moduleName(index, module);
    const kind = module.kind === undefined ? undefined : index.moduleKinds.get(module.kind);
    const pitchMm = kind?.labelPitchMm === undefined ? 0 : figureValue(kind.labelPitchMm);
    const heightMm = kind?.labelHeightMm === undefined ? 0 : figureValue(kind.labelHeightMm);
    if (kind === undefined || !(pitchMm > 0) || !(heightMm > 0)) {
      wants.push({
        module: title,
        why:
          kind === undefined
            ? "its kind is not known"
            : `the sheet of ${kind.name} states no label ${pitchMm > 0 ? "height" : "pitch"}`,
      });
      continue;
    }
    const widthMm = kind.labelWidthMm === undefined ? pitchMm : figureValue(kind.labelWidthMm);
    const byChannel = new Map(
      (index.circuitsOfModule.get(module.id) ?? []).map((circuit) => [circuit.channel, circuit]),
    );
    const labels = Array.from({ length: kind.channels }, (_, i) => {
      const circuit = byChannel.get(i + 1);
      const ratedA = circuit?.fuse?.ratedA === undefined ? undefined : figureValue(circuit.fuse.ratedA);
      return {
        head: ratedA === undefined ? String(i + 1) : `${i + 1} · ${ratedA} A`,
        text: circuit === undefined ? "spare" : feedsOf(index, circuit),
      };
    });
    strips.push({ title, pitchMm, widthMm: Math.min(widthMm, pitchMm), heightMm, labels });
  }
  return { strips, wants };
}
