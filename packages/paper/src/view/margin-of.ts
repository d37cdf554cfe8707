import { type Finding, findingWords } from "@fusebook/core/findings";
import type { UnitChoice } from "@fusebook/core/quantity";
import type { Circuit } from "@fusebook/core/record";
import type { Margin } from "../drawings/look.js";

/** Findings that speak of what a wire, a fuse or a channel carries; the rest (labels, addresses) leave the drawing of the wire as it is. */
const ELECTRICAL: ReadonlySet<string> = new Set([
  "fuse-over-conductor",
  "fuse-over-tail",
  "fuse-over-channel",
  "fuse-over-load-limit",
  "load-over-fuse",
  "continuous-load-over-fuse",
  "conductor-under-minimum",
  "return-missing",
  "channel-over-rating",
  "relay-contact-derating",
  "dimmed-channel-over-rating",
  "drop-over-limit",
  "voltage-under-minimum",
  "voltage-over-maximum",
  "fuse-rating-missing",
  "wire-gauge-missing",
  "wire-length-missing",
  "insulation-unknown",
  "load-current-missing",
]);

const WORST: readonly Margin[] = ["fails", "open", "tight", "ample"];

const marginOfFinding = (finding: Finding): Margin => {
  if (finding.verdict === "holds") return "ample";
  if (finding.verdict === "open" || finding.code.endsWith("-missing") || finding.code.endsWith("-unknown"))
    return "open";
  return finding.severity === "stop" || finding.severity === "mend" ? "fails" : "tight";
};

export interface CircuitMargin {
  readonly margin: Margin;
  /** The titles of what is not ample, worst first. */
  readonly note: string;
}

/** How the wire of a circuit is drawn: its worst electrical finding, its loads' included. */
export function marginOf(
  circuit: Circuit,
  bySubject: ReadonlyMap<string, readonly Finding[]>,
  units: UnitChoice,
): CircuitMargin {
  if ((circuit.loads ?? []).length === 0 && circuit.isSpare) return { margin: "spare", note: "" };
  const own = [circuit.id as string, ...(circuit.loads ?? [])]
    .flatMap((id) => bySubject.get(id) ?? [])
    .filter((f) => ELECTRICAL.has(f.code));
  const margin = WORST.find((one) => own.some((finding) => marginOfFinding(finding) === one)) ?? "ample";
  const titles = WORST.flatMap((one) => own.filter((f) => marginOfFinding(f) === one && one !== "ample")).map(
    (f) => findingWords(f, units).title,
  );
  return { margin, note: [...new Set(titles)].slice(0, 2).join("; ") };
}

export function findingsBySubject(findings: readonly Finding[]): ReadonlyMap<string, readonly Finding[]> {
  const map = new Map<string, Finding[]>();
  for (const finding of findings) map.set(finding.subject.id, [...(map.get(finding.subject.id) ?? []), finding]);
  return map;
}
