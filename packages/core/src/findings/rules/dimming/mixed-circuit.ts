import { steadyOf } from "../../../dimming/index.js";
import { COMMON_PRACTICE } from "../../../quantity/index.js";
import { defineRule } from "../../define-rule.js";
import { loadsOf } from "../../leans.js";
import { minutesFor } from "../../settle.js";
import { ofCircuit } from "../../subject.js";

export const mixedCircuit = defineRule(
  {
    code: "mixed-circuit",
    asks: "Are loads that may dim on circuits of their own?",
    severity: "watch",
    source: COMMON_PRACTICE,
  },
  function* (context) {
    const { index } = context;
    for (const circuit of index.circuits.values()) {
      const loads = loadsOf(context, circuit);
      if (loads.length < 2) continue;
      const told = loads.map((load) => ({ load, must: steadyOf(load).must }));
      const steady = told.filter(({ must }) => must === "yes");
      const dimmable = told.filter(({ must }) => must === "no");
      const unsure = told.filter(({ must }) => must === "unknown");
      const isMixed = steady.length > 0 && dimmable.length > 0;
      const mayBe = unsure.length > 0 && !isMixed;
      yield {
        subject: ofCircuit(index, circuit),
        verdict: isMixed ? "fails" : mayBe ? "open" : "holds",
        parameters: {
          steady: steady.map(({ load }) => load.name).join(", "),
          dimmable: dimmable.map(({ load }) => load.name).join(", "),
          unsure: unsure.map(({ load }) => load.name).join(", "),
        },
        settledBy: mayBe
          ? unsure.map(({ load }) => ({
              path: `${index.pathOf("loads", load.id)}.class`,
              instrument: "look",
              minutes: minutesFor(index, "look", load.place),
            }))
          : [],
      };
    }
  },
);
