import { profileFault, profilesOf } from "../../../endurance/index.js";
import { COMMON_PRACTICE } from "../../../quantity/index.js";
import { defineRule } from "../../define-rule.js";
import { ofCoach } from "../../subject.js";

export const profileFaulty = defineRule(
  {
    code: "profile-faulty",
    asks: "Can every load profile on the record be followed, and does every wish of hours name one?",
    severity: "mend",
    source: COMMON_PRACTICE,
  },
  function* ({ index }) {
    const { profiles, wanted } = index.record.endurance ?? {};
    for (const [i, profile] of (profiles ?? []).entries()) {
      const path = `endurance.profiles[${i}]`;
      const fault = profileFault(index, profile, path);
      yield {
        subject: { ...ofCoach(index), path },
        verdict: fault === undefined ? "holds" : "fails",
        parameters: { profile: profile.id, because: fault?.because ?? "" },
      };
    }
    const known = profilesOf(index);
    for (const [i, wish] of (wanted ?? []).entries()) {
      const path = `endurance.wanted[${i}]`;
      const isKnown = known.has(wish.profile) && wish.hours > 0;
      const because = known.has(wish.profile)
        ? `${path}.hours: wanted more than 0, got ${wish.hours}`
        : `${path}.profile: there is no profile "${wish.profile}"; there are ${[...known.keys()].join(", ")}`;
      yield {
        subject: { ...ofCoach(index), path },
        verdict: isKnown ? "holds" : "fails",
        parameters: { profile: wish.profile, because: isKnown ? "" : because },
      };
    }
  },
);
