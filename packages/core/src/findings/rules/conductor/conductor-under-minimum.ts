import { sourceOf } from "../../../tables/index.js";
import { defineRule } from "../../define-rule.js";
import { atLeastGauge } from "../../minimum-gauge.js";
import { minutesFor } from "../../settle.js";
import { ofCircuit } from "../../subject.js";

/** The thinnest conductor that NEC 240.4(D) names a device for, and the thinnest single one of ABYC E-11 as quoted. */
const NEC = { gauge: "18", source: sourceOf("nec-lv-rv", "240.4(D)(1)") };
const MARINE = { gauge: "16", source: sourceOf("abyc-vdrop") };

export const conductorUnderMinimum = defineRule(
  {
    code: "conductor-under-minimum",
    asks: "Is every circuit's wire at least as thick as the rules allow?",
    severity: "watch",
    source: NEC.source,
  },
  function* ({ index, policy }) {
    const least = policy.conductorRule === "marine" ? MARINE : NEC;
    for (const circuit of index.circuits.values()) {
      const subject = ofCircuit(index, circuit);
      for (const field of ["out", "return"] as const) {
        const run = circuit[field];
        if (run === undefined) continue;
        const told = atLeastGauge(run, policy, least.gauge);
        if (told === undefined) continue;
        const path = `${subject.path}.${field}.${run.sectionMm2 === undefined ? "gauge" : "sectionMm2"}`;
        yield {
          subject,
          ...told,
          parameters: { ...told.parameters, run: field },
          source: least.source,
          evidence: [{ path, label: "section", unit: "mm2", value: told.parameters.got ?? 0 }],
          settledBy:
            told.verdict === "open"
              ? [{ path, instrument: "look", minutes: minutesFor(index, "look", run.place) }]
              : [],
        };
      }
    }
  },
);
