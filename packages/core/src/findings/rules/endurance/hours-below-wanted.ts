import { enduranceOf, profilesOf } from "../../../endurance/index.js";
import { COMMON_PRACTICE } from "../../../quantity/index.js";
import { against } from "../../against.js";
import { defineRule, type Said } from "../../define-rule.js";
import { type Leaned, readingsThatSettle } from "../../settle.js";
import { ofCoach } from "../../subject.js";

export const hoursBelowWanted = defineRule(
  {
    code: "hours-below-wanted",
    asks: "Do the batteries last the hours that the owner asks for?",
    severity: "watch",
    source: COMMON_PRACTICE,
  },
  function* ({ index }) {
    const names = profilesOf(index);
    for (const [i, wanted] of (index.record.endurance?.wanted ?? []).entries()) {
      // `profile-faulty` says so.
      if (!(wanted.hours > 0) || !names.has(wanted.profile)) continue;
      const subject = { ...ofCoach(index), path: `endurance.wanted[${i}]` };
      const profile = names.get(wanted.profile)?.name ?? wanted.profile;
      const found = enduranceOf(index, wanted.profile, { horizonH: 1.2 * wanted.hours, spans: "coarse" });
      if (found.kind !== "known") {
        const needs = found.kind === "missing" ? found.needs : [];
        const open: Said = {
          subject,
          verdict: "open",
          parameters: { profile, limit: wanted.hours },
          limit: { value: wanted.hours, unit: "count", sense: "at-least" },
          settledBy: readingsThatSettle(
            index,
            needs.map((path): Leaned => ({ path, figure: undefined, instrument: "look" })),
          ),
        };
        yield open;
        continue;
      }
      const { hours, banks, assumed } = found.value;
      const said = against(
        { value: hours.nominal, span: hours.span },
        { value: wanted.hours, unit: "count", sense: "at-least" },
      );
      const memory = assumed.map((one) => one.source).find((source) => source.how === "memory");
      const leaned = banks
        .flatMap((bank) => bank.supplies)
        .flatMap((id): Leaned[] => {
          const supply = index.supplies.get(id);
          if (supply === undefined) return [];
          const path = index.pathOf("supplies", id);
          const { place, capacityAh, chargeRatio, temperatureC } = supply;
          return [
            { path: `${path}.chargeRatio`, figure: chargeRatio, instrument: "voltmeter", place },
            { path: `${path}.temperatureC`, figure: temperatureC, instrument: "thermometer", place },
            { path: `${path}.capacityAh`, figure: capacityAh, instrument: "look", place },
          ];
        });
      const judged: Said = {
        subject,
        ...said,
        parameters: { ...said.parameters, profile },
        evidence: banks.map((bank) => ({
          path: `${index.pathOf("supplies", bank.supplies[0]!)}.capacityAh`,
          label: "battery-capacity" as const,
          unit: "Ah" as const,
          value: bank.capacityAh.value,
          span: bank.capacityAh.span,
        })),
        alsoRestsOn: memory === undefined ? [] : [memory],
        settledBy: said.verdict === "open" ? readingsThatSettle(index, leaned) : [],
      };
      yield judged;
    }
  },
);
