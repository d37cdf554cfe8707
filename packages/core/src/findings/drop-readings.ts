import type { DropPart } from "../network/index.js";
import { figureBasis, figureValue, spanOf, widthOf } from "../quantity/index.js";
import type { Circuit, Load } from "../record/index.js";
import type { CoachContext } from "./context.js";
import type { SettledBy } from "./finding.js";
import { drawOf, loadsOf, runLeans } from "./leans.js";
import { type Leaned, minutesFor } from "./settle.js";

/** A figure that nobody wrote down is doubted by all of itself. */
const UNKNOWN_DOUBT_RATIO = 1;
const SHOWN_AT_MOST = 5;

const KIND = { ohmmeter: "resistance", "tape measure": "length", "clamp meter": "current" } as const;

/** How much of its own value a figure may be off, to either side. */
function doubtRatio({ figure, instrument }: Leaned): number {
  if (figure === undefined || figureValue(figure) === 0) return UNKNOWN_DOUBT_RATIO;
  const kind = instrument in KIND ? KIND[instrument as keyof typeof KIND] : "any";
  return widthOf(spanOf(figure, kind)) / 2 / Math.abs(figureValue(figure));
}

/** The fields that a part of a drop comes from: of a cable, a circuit, a module's kind or a load's tail. */
function fieldsOf(context: CoachContext, part: DropPart): Leaned[] {
  const { index } = context;
  const id = part.id ?? "";
  const ohms = (path: string, figure: Leaned["figure"], place: string | undefined): Leaned[] => [
    { path, figure, instrument: "ohmmeter", place },
  ];
  const cable = index.cables.get(id);
  if (cable !== undefined) {
    const path = index.pathOf("cables", id);
    return part.place === "fuse"
      ? ohms(`${path}.protection.resistanceOhm`, cable.protection?.resistanceOhm, cable.place)
      : runLeans(cable, path);
  }
  const circuit = index.circuits.get(id);
  if (circuit !== undefined) {
    const path = index.pathOf("circuits", id);
    const module = index.modules.get(circuit.module ?? "");
    if (part.place === "fuse") return ohms(`${path}.fuse.resistanceOhm`, circuit.fuse?.resistanceOhm, module?.place);
    if (part.place === "wire" && circuit.out !== undefined) return runLeans(circuit.out, `${path}.out`);
    if (part.place === "return" && circuit.return !== undefined) return runLeans(circuit.return, `${path}.return`);
    if (part.place === "connector")
      return (circuit.connectors ?? []).flatMap((each, i) =>
        ohms(`${path}.connectors[${i}].resistanceOhm`, each.resistanceOhm, each.place),
      );
  }
  const module = index.modules.get(id);
  const kind = index.moduleKinds.get(module?.kind ?? "");
  if (kind !== undefined)
    return ohms(`${index.pathOf("moduleKinds", kind.id)}.onResistanceOhm`, kind.onResistanceOhm, module?.place);
  const load = index.loads.get(id);
  if (load?.tail !== undefined) return runLeans(load.tail, `${index.pathOf("loads", id)}.tail`);
  return [];
}

/**
 * Which readings would narrow the drop to this load most for the minutes they take? The volts of each part of the drop, with everything on, times how
 * far its figures may be off; the draws of the circuit count with the whole drop. At most five, best first.
 */
export function dropReadings(context: CoachContext, load: Load, circuit: Circuit): SettledBy[] {
  const found = context.allOn()?.nominal.loads.get(load.id);
  const result = found?.kind === "known" ? found.value : undefined;
  const ranked = new Map<string, SettledBy & { readonly worth: number }>();
  const put = (field: Leaned, dropV: number): void => {
    if (field.figure !== undefined && figureBasis(field.figure) === "measured") return;
    const minutes = minutesFor(context.index, field.instrument, field.place);
    const worth = (Math.abs(dropV) * doubtRatio(field)) / Math.max(1, minutes);
    const before = ranked.get(field.path)?.worth ?? 0;
    ranked.set(field.path, { path: field.path, instrument: field.instrument, minutes, worth: before + worth });
  };
  for (const part of result?.parts ?? []) for (const field of fieldsOf(context, part)) put(field, part.dropV);
  for (const each of loadsOf(context, circuit)) put(drawOf(context, each), result?.dropV ?? 1);
  const best = [...ranked.values()].filter(({ worth }) => worth > 0).sort((a, b) => b.worth - a.worth);
  const shown = best.slice(0, SHOWN_AT_MOST).map(({ path, instrument, minutes }) => ({ path, instrument, minutes }));
  if (shown.length > 0) return shown;
  // Everything was measured: the doubt that is left is the meters' own. A finer reading of the draw is the shortest.
  return loadsOf(context, circuit).map((each) => {
    const { path, instrument, place } = drawOf(context, each);
    return { path, instrument, minutes: minutesFor(context.index, instrument, place) };
  });
}
