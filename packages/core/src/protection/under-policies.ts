import { type Comparison, compareSpan, figureValue, known, missing, type Outcome, refused } from "../quantity/index.js";
import { type CoachIndex, type FullPolicy, policyOf, type WireRun } from "../record/index.js";
import { type Ampacity, ampacityOf } from "./ampacity.js";
import { type DeviceCeiling, deviceCeilingOf } from "./device-ceiling.js";
import { type ProtectionDistance, protectionDistanceOf } from "./protection-distance.js";

/** Sets of published limits that can be asked side by side. */
export const POLICY_NAMES = ["record", "nec", "marine", "marine-bundled", "road-vehicle"] as const;
export type PolicyName = (typeof POLICY_NAMES)[number];

/**
 * The record's policy with the limits of one rule book: `nec` (device not above ampacity, bundles from four); `marine` (33 CFR 183, whose text applies
 * bundle factors only at 50 V and more); `marine-bundled` (the same with them); `road-vehicle` (125 % or the next size; no bundle rule seen).
 */
export function namedPolicy(index: CoachIndex, name: PolicyName): FullPolicy {
  const own = policyOf(index.record);
  switch (name) {
    case "record":
      return own;
    case "nec":
      return { ...own, conductorRule: "nec", bundling: "nec", overcurrentCeilingRatio: 1 };
    case "marine":
      return { ...own, conductorRule: "marine", bundling: "none" };
    case "marine-bundled":
      return { ...own, conductorRule: "marine", bundling: "marine" };
    case "road-vehicle":
      return { ...own, conductorRule: "road-vehicle", bundling: "none" };
  }
}

/** One conductor of a circuit under one policy. */
export interface RunUnderPolicy {
  readonly part: "wire" | "return" | "tail";
  readonly id: string;
  readonly path: string;
  readonly ampacity: Outcome<Ampacity>;
  readonly ceiling: Outcome<DeviceCeiling>;
  /** The circuit's fuse against the ceiling; undefined where either is not known. */
  readonly fuse: Comparison | undefined;
}

export interface UnderPolicy {
  readonly policy: PolicyName;
  readonly runs: readonly RunUnderPolicy[];
  readonly distance: ProtectionDistance;
}

/**
 * What may each conductor of this circuit carry, and how large a device may protect it, under these rule books, side by side? Each keeps its own source;
 * nothing is blended. Refused: `no-such-circuit`. Missing: the run out, where none is on record.
 */
export function underPolicies(
  index: CoachIndex,
  circuitId: string,
  policies: readonly PolicyName[],
): Outcome<readonly UnderPolicy[]> {
  const circuit = index.circuits.get(circuitId as never);
  if (circuit === undefined) return refused("no-such-circuit", `the record has no circuit ${circuitId}`);
  const path = index.pathOf("circuits", circuit.id);
  const runs: { part: RunUnderPolicy["part"]; id: string; path: string; run: WireRun }[] = [];
  if (circuit.out) runs.push({ part: "wire", id: circuit.id, path: `${path}.out`, run: circuit.out });
  if (circuit.return) runs.push({ part: "return", id: circuit.id, path: `${path}.return`, run: circuit.return });
  for (const id of circuit.loads ?? []) {
    const tail = index.loads.get(id)?.tail;
    if (tail) runs.push({ part: "tail", id, path: `${index.pathOf("loads", id)}.tail`, run: tail });
  }
  if (runs.length === 0) return missing(`${path}.out`);
  const zoneOf = (place: string) => index.places.get(place)?.zone;
  const ratedA = circuit.fuse?.ratedA === undefined ? undefined : figureValue(circuit.fuse.ratedA);
  return known(
    policies.map((name) => {
      const policy = namedPolicy(index, name);
      return {
        policy: name,
        distance: protectionDistanceOf(policy, circuit.out?.isSheathed === true),
        runs: runs.map(({ run, ...rest }) => {
          const ceiling = deviceCeilingOf(run, policy, `${rest.path}.`, zoneOf);
          return {
            ...rest,
            ampacity: ampacityOf(run, policy, `${rest.path}.`, zoneOf),
            ceiling,
            fuse: ceiling.kind === "known" && ratedA !== undefined ? fuseAgainst(ratedA, ceiling.value) : undefined,
          };
        }),
      };
    }),
  );
}

function fuseAgainst(ratedA: number, { span }: DeviceCeiling): Comparison {
  const point = { lo: ratedA, hi: ratedA };
  if (compareSpan(point, span.lo, "at-most") === "holds") return "holds";
  return compareSpan(point, span.hi, "at-most") === "fails" ? "fails" : "open";
}
