import { type Dimension, showQuantity, type UnitChoice } from "../../quantity/index.js";
import type { EvidenceLabel } from "../evidence-label.js";
import type { Evidence } from "../finding.js";

/** What each piece of evidence is called. */
const LABELS: Readonly<Record<EvidenceLabel, string>> = {
  address: "address that the program uses",
  ampacity: "what the conductor may carry",
  "answers-to": "address it answers to",
  "battery-capacity": "what the battery holds",
  "bit-rate": "bit rate",
  bundle: "conductors in the bundle",
  "busbar-rating": "rating of the bar",
  channel: "channel",
  "channel-current": "current through the channel",
  "channel-fuse-limit": "largest fuse the channel allows",
  "channel-rating": "rating of the channel",
  "contact-factor": "times the steady current",
  current: "current",
  "device-ceiling": "largest device for the conductor",
  "device-rating": "rating of the feeder's device",
  "dimmed-rating": "rating while dimmed",
  "distance-from-source": "cable before the fuse",
  drop: "drop",
  "feeder-current": "current in the feeder",
  "fuse-rating": "fuse",
  "fuse-type": "type of fuse",
  gauge: "gauge",
  insulation: "insulation class",
  label: "label on the coach",
  "least-duty": "lowest duty the module gives",
  length: "length",
  "load-class": "sort of load",
  "load-fuse-limit": "largest fuse the load allows",
  "load-voltage": "voltage at the load",
  "maximum-voltage": "highest voltage the load allows",
  "minimum-voltage": "lowest voltage the load works at",
  "module-current": "current into the module",
  "module-rating": "rating of the module",
  "nominal-voltage": "nominal voltage",
  "positions-found": "switches as found",
  "pulse-peak": "peak of every pulse",
  "pulse-rms": "root mean square of the pulses",
  "pwm-frequency": "PWM frequency",
  resistance: "resistance",
  section: "section of copper",
  "short-circuit-current": "current of a dead short",
  "starting-current": "peak of the starting current",
  "standing-draw": "draws with everything off",
  "supply-voltage": "voltage of the supply",
  terminators: "terminators",
  "trunk-length": "length of the trunk",
};

const DIMENSION: Readonly<Partial<Record<Evidence["unit"], Dimension>>> = {
  A: "current",
  V: "voltage",
  W: "power",
  ohm: "resistance",
  m: "length",
  mm2: "section",
  C: "temperature",
  Hz: "frequency",
  Ah: "capacity",
};

/** One piece of evidence in a line: what it is, its value and span in the reader's units, how it is known. */
export function evidenceWords(evidence: Evidence, units: UnitChoice): string {
  const dimension = DIMENSION[evidence.unit];
  const show = (value: number): string =>
    evidence.unit === "min"
      ? `${Math.round(value)} min`
      : dimension === undefined
        ? String(value)
        : showQuantity(value, dimension, units);
  const value = typeof evidence.value === "number" ? show(evidence.value) : evidence.value;
  const { span } = evidence;
  const width = span === undefined || span.lo === span.hi ? "" : `, ${show(span.lo)} to ${show(span.hi)}`;
  return `${LABELS[evidence.label]}: ${value}${evidence.basis === undefined ? "" : ` (${evidence.basis}${width})`}`;
}
