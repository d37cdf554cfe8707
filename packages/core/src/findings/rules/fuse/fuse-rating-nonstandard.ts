import { figureBasis, figureValue } from "../../../quantity/index.js";
import type { Fuse } from "../../../record/index.js";
import { necStandardDevices, sourceOf, standardFuses } from "../../../tables/index.js";
import { defineRule, type Said } from "../../define-rule.js";
import { figureEvidence } from "../../evidence.js";
import { minutesFor } from "../../settle.js";
import { ofCable, ofCircuit } from "../../subject.js";

const BLADES = standardFuses();
const DEVICES = necStandardDevices();
/** The lists name no size below or above these; a device outside them says nothing. */
const smallestDeviceA = Math.min(...DEVICES.value);
const largestDeviceA = Math.max(...DEVICES.value);

/** The sizes that can be bought of this type, and who lists them; undefined where no list was seen. */
function sizesOf(fuse: Fuse): (Pick<Said, "source"> & { readonly sizesA: readonly number[] }) | undefined {
  const ratedA = fuse.ratedA === undefined ? Number.NaN : figureValue(fuse.ratedA);
  switch (fuse.type) {
    case undefined:
    case "blade":
    case "blade-slow":
      // A large device of unknown type is hardly a blade.
      return fuse.type === undefined && ratedA > 40
        ? undefined
        : { sizesA: BLADES.map((size) => size.ratedA), source: sourceOf("blade-colour") };
    case "bolt-down":
    case "cartridge":
    case "breaker":
      return ratedA < smallestDeviceA || ratedA > largestDeviceA
        ? undefined
        : { sizesA: DEVICES.value, source: DEVICES.source };
    default:
      return undefined;
  }
}

export const fuseRatingNonstandard = defineRule(
  {
    code: "fuse-rating-nonstandard",
    asks: "Is every fuse of a size that can be bought?",
    severity: "note",
    source: sourceOf("blade-colour"),
  },
  function* ({ index }) {
    const fuses = [
      ...(index.record.circuits ?? []).map((circuit) => ({
        subject: ofCircuit(index, circuit),
        fuse: circuit.fuse,
        field: "fuse",
        place: index.modules.get(circuit.module ?? "")?.place,
      })),
      ...[...index.cables.values()].map((cable) => ({
        subject: ofCable(index, cable),
        fuse: cable.protection,
        field: "protection",
        place: cable.place,
      })),
    ];
    for (const { subject, fuse, field, place } of fuses) {
      if (fuse?.ratedA === undefined) continue;
      const sizes = sizesOf(fuse);
      if (sizes === undefined) continue;
      const path = `${subject.path}.${field}.ratedA`;
      const ratedA = figureValue(fuse.ratedA);
      const isListed = sizes.sizesA.includes(ratedA);
      const isRead = ["measured", "marked"].includes(figureBasis(fuse.ratedA));
      yield {
        subject,
        verdict: isListed ? "holds" : isRead ? "fails" : "open",
        source: sizes.source ?? sourceOf("blade-colour"),
        parameters: {
          got: ratedA,
          below: Math.max(0, ...sizes.sizesA.filter((size) => size < ratedA)),
          above: Math.min(...sizes.sizesA.filter((size) => size > ratedA)),
        },
        evidence: [figureEvidence(path, "fuse-rating", "A", fuse.ratedA, "rating")],
        settledBy: isListed || isRead ? [] : [{ path, instrument: "look", minutes: minutesFor(index, "look", place) }],
      };
    }
  },
);
