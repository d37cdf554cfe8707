import { COMMON_PRACTICE } from "../../../quantity/index.js";
import type { CoachIndex, Load } from "../../../record/index.js";
import { defineRule } from "../../define-rule.js";
import { textEvidence } from "../../evidence.js";
import { sortsNamed } from "../../label-sorts.js";
import { loadsOf } from "../../leans.js";
import { minutesFor } from "../../settle.js";
import { ofCircuit } from "../../subject.js";

/** The place and every place it lies within. */
function placesOf(index: CoachIndex, place: string | undefined): Set<string> {
  const all = new Set<string>();
  for (let at = place; at !== undefined && !all.has(at); at = index.places.get(at)?.within) all.add(at);
  return all;
}

/** The places of the record that a label calls by their full name. */
const placesNamed = (index: CoachIndex, label: string): string[] =>
  [...index.places.values()]
    .filter(({ name }) => name.trim() !== "" && ` ${label.toLowerCase()} `.includes(` ${name.trim().toLowerCase()} `))
    .map(({ id }) => id);

/** Every load is known to be somewhere else than the label says. */
function isElsewhere(index: CoachIndex, named: readonly string[], loads: readonly Load[]): boolean {
  if (named.length === 0 || loads.some((load) => load.place === undefined)) return false;
  // A load may be called after a place that it is not in: the roof fan of the galley.
  const isCalledSo = (place: string): boolean =>
    loads.some((load) => load.name.toLowerCase().includes(index.places.get(place)?.name.trim().toLowerCase() ?? ""));
  if (named.some(isCalledSo)) return false;
  return loads.every((load) => {
    const around = placesOf(index, load.place);
    return named.every((place) => !around.has(place) && !placesOf(index, place).has(load.place ?? ""));
  });
}

export const labelContradictsLoads = defineRule(
  {
    code: "label-contradicts-loads",
    asks: "Does the label say what the fuse feeds?",
    severity: "mend",
    source: COMMON_PRACTICE,
  },
  function* (context) {
    const { index } = context;
    for (const circuit of index.record.circuits ?? []) {
      const label = circuit.label?.trim() ?? "";
      const loads = loadsOf(context, circuit);
      if (label === "" || loads.length === 0) continue;
      const subject = ofCircuit(index, circuit);
      const said = sortsNamed(label);
      const isSpareSaid = circuit.isSpare === true || /^spare\b/i.test(label);
      const unclassed = loads.filter((load) => load.class === undefined);
      const fits = loads.some(
        (load) => load.class !== undefined && said.some(({ classes }) => classes.includes(load.class ?? "outlet")),
      );
      const elsewhere = isElsewhere(index, placesNamed(index, label), loads);
      const sortWrong = said.length > 0 && !fits;
      const verdict =
        isSpareSaid || elsewhere || (sortWrong && unclassed.length === 0) ? "fails" : sortWrong ? "open" : "holds";
      yield {
        subject,
        verdict,
        parameters: {
          label,
          says: isSpareSaid ? "spare" : elsewhere ? "place" : said.map(({ sort }) => sort).join(" or "),
          loads: loads.map((load) => load.name).join(", "),
        },
        evidence: [textEvidence(`${subject.path}.label`, "label", label)],
        settledBy:
          verdict === "open"
            ? unclassed.map((load) => ({
                path: `${index.pathOf("loads", load.id)}.class`,
                instrument: "look",
                minutes: minutesFor(index, "look", load.place),
              }))
            : [],
      };
    }
  },
);
