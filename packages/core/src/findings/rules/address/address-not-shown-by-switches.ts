import { checkFound } from "../../../switchbank/index.js";
import { defineRule } from "../../define-rule.js";
import { textEvidence } from "../../evidence.js";
import { minutesFor } from "../../settle.js";
import { PART_SHEET } from "../../sources.js";
import { ofModule } from "../../subject.js";

const VERDICT = { agree: "holds", differ: "fails", "cannot-tell": "open" } as const;

export const addressNotShownBySwitches = defineRule(
  {
    code: "address-not-shown-by-switches",
    asks: "Do the switches as found give the address that the module answers to?",
    severity: "mend",
    source: PART_SHEET,
  },
  function* ({ index }) {
    for (const module of index.modules.values()) {
      const kind = module.kind === undefined ? undefined : index.moduleKinds.get(module.kind);
      const address = module.answersTo ?? module.address;
      if (address === undefined || kind?.bank?.address === undefined) continue;
      const subject = ofModule(index, module);
      const path = `${subject.path}.positionsFound`;
      const settledBy = [{ path, instrument: "look", minutes: minutesFor(index, "look", module.place) } as const];
      if (module.positionsFound === undefined) {
        yield { subject, verdict: "open", parameters: { address, found: "", shows: "", wrong: "" }, settledBy };
        continue;
      }
      const check = checkFound(kind.bank, module.positionsFound, { address });
      const verdict = VERDICT[check.verdict];
      yield {
        subject,
        verdict,
        parameters: {
          address,
          found: module.positionsFound,
          shows: check.shows.kind === "known" ? check.shows.value.join(" or ") : "",
          wrong: check.wrong.map((each) => each.switch).join(", "),
        },
        evidence: [
          textEvidence(path, "positions-found", module.positionsFound),
          {
            path: `${subject.path}.${module.answersTo === undefined ? "address" : "answersTo"}`,
            label: module.answersTo === undefined ? "address" : "answers-to",
            unit: "count",
            value: address,
            basis: module.answersTo === undefined ? "marked" : "measured",
          },
        ],
        settledBy: verdict === "open" ? settledBy : [],
      };
    }
  },
);
