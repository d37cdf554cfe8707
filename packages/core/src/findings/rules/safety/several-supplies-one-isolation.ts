import { COMMON_PRACTICE } from "../../../quantity/index.js";
import { defineRule } from "../../define-rule.js";
import { minutesFor } from "../../settle.js";
import { ofItem } from "../../subject.js";

const plain = (text: string): string => text.trim().toLowerCase().replace(/\s+/g, " ");

export const severalSuppliesOneIsolation = defineRule(
  {
    code: "several-supplies-one-isolation",
    asks: "Does each supply have an isolation point of its own, so that none is forgotten behind another's?",
    severity: "watch",
    source: COMMON_PRACTICE,
  },
  function* ({ index }) {
    const firstBy = new Map<string, string>();
    for (const supply of index.supplies.values()) {
      const what = supply.isolation?.what;
      if (what === undefined || plain(what) === "") continue;
      const subject = ofItem(index, "supplies", supply);
      const key = `${plain(what)}|${supply.isolation?.place ?? ""}`;
      const first = firstBy.get(key);
      if (first === undefined) firstBy.set(key, supply.name);
      // One switch may well cut both; whether it does has to be seen once, with a meter.
      yield {
        subject,
        verdict: first === undefined ? "holds" : "open",
        parameters: { what, first: first ?? "" },
        settledBy:
          first === undefined
            ? []
            : [
                {
                  path: `${subject.path}.isolation.what`,
                  instrument: "voltmeter",
                  minutes: minutesFor(index, "voltmeter", supply.isolation?.place ?? supply.place),
                },
              ],
      };
    }
  },
);
