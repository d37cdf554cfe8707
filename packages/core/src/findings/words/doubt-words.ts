import type { FindingCode } from "../codes.js";
import type { Speaker } from "./say.js";

export const DOUBT_WORDS = {
  "figures-contradict": (say) => {
    const dimension = say.text("what") === "wire" ? "resistance" : "current";
    const apart = `${say.quantity("readLo", dimension)} to ${say.quantity("readHi", dimension)} against ${say.quantity("otherLo", dimension)} to ${say.quantity("otherHi", dimension)}`;
    return say.text("what") === "wire"
      ? {
          title: "Measured resistance does not fit the wire",
          wanted: "a wire that measures what copper of its length and size does",
          got: apart,
          remedy:
            say.text("isAbove") === "yes"
              ? "Look for a poor joint on this wire and check its length and gauge; the measured figure is the one used"
              : "Check the length and the gauge, and zero the meter's leads; the measured figure is the one used",
        }
      : {
          title: "Amps and watts of a load contradict each other",
          wanted: "amps that fit the watts at the rated volts",
          got: apart,
          remedy: "Clamp it again while it runs, and read its label; the amps are the figure used",
        };
  },
} satisfies Partial<Record<FindingCode, Speaker>>;
