import { labelCurrentOf } from "../../../dimming/index.js";
import { fitOfLoad, labelAgainstReadings } from "../../../network/index.js";
import { COMMON_PRACTICE, midOf } from "../../../quantity/index.js";
import { defineRule, type Said } from "../../define-rule.js";
import { minutesFor } from "../../settle.js";
import { ofLoad } from "../../subject.js";

export const loadReadingsContradict = defineRule(
  {
    code: "load-readings-contradict",
    asks: "Do a load's readings of volts and amps agree with each other, with its sort and with its label?",
    severity: "watch",
    source: COMMON_PRACTICE,
  },
  function* ({ index, nominalV }): Generator<Said> {
    for (const load of index.loads.values()) {
      const fit = fitOfLoad(load, nominalV);
      if (fit === undefined) continue;
      const subject = ofLoad(index, load);
      const again: Said["settledBy"] = [
        {
          path: `${subject.path}.drawReadings`,
          instrument: "clamp meter",
          minutes: minutesFor(index, "clamp meter", load.place),
        },
      ];
      if (fit.kind === "missing")
        yield {
          subject,
          verdict: "open",
          parameters: { why: "class-unknown" },
          settledBy: [
            { path: `${subject.path}.class`, instrument: "look", minutes: minutesFor(index, "look", load.place) },
          ],
        };
      else if (fit.kind === "refused")
        yield {
          subject,
          verdict: fit.code === "reading-too-wide" ? "open" : "fails",
          parameters: { why: fit.code, because: fit.because },
          settledBy: again,
        };
      else {
        const label = labelCurrentOf(load);
        const against = label.kind === "known" ? labelAgainstReadings(load, nominalV, label.value) : undefined;
        const told = against?.kind === "known" ? against.value : undefined;
        const agrees = told === undefined || told.agrees;
        const parameters: Record<string, string | number> = { why: agrees ? "" : "label-differs" };
        if (told !== undefined) Object.assign(parameters, { readA: midOf(told.readA), labelA: midOf(told.labelA) });
        yield { subject, verdict: agrees ? "holds" : "fails", parameters, settledBy: agrees ? [] : again };
      }
    }
  },
);
