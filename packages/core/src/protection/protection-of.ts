import { loadFiguresOf, nominalVOf } from "../network/index.js";
import {
  type Comparison,
  compareSpan,
  figureValue,
  known,
  missing,
  type Outcome,
  refused,
  type Span,
  spanOf,
} from "../quantity/index.js";
import { type Circuit, type CoachIndex, policyOf } from "../record/index.js";
import { type ProspectiveAtDevice, prospectiveAtFuse } from "./at-device.js";
import { circuitInrushOf } from "./circuit-inrush.js";
import { type DeviceAbove, type FarFault, type FaultEnd, faultAtFarEnd } from "./far-fault.js";
import { type ConductorInFault, conductorInFault, type FaultClearing, faultClearing } from "./fault-clearing.js";
import { type FuseGates, fuseGatesOf } from "./fuse-gates.js";
import type { Inrush } from "./inrush.js";
import { type InrushVerdict, inrushVerdict } from "./inrush-margin.js";
import { protectionDistanceOf } from "./protection-distance.js";
import { type Selectivity, selectivityOf } from "./selectivity.js";
import { type PolicyName, type UnderPolicy, underPolicies } from "./under-policies.js";

/** A short at one end of the circuit, and what the fuse does about it. */
export interface EndInFault {
  readonly end: FaultEnd;
  readonly clearing: FaultClearing;
  /** Every conductor in its way whose size is known. */
  readonly conductors: readonly ConductorInFault[];
}

/** A device on the way from the battery, against the circuit's fuse. */
export interface AboveCircuit {
  readonly device: DeviceAbove;
  readonly gates: Outcome<FuseGates>;
  readonly selectivity: Outcome<Selectivity>;
  /** Along the conductor from where its supply connects, against the policy's limit, m. */
  readonly distance: Outcome<{ readonly valueM: number; readonly maxM: number; readonly verdict: Comparison }>;
}

export interface CircuitProtection {
  readonly circuit: Circuit;
  readonly path: string;
  readonly fuse: Outcome<FuseGates>;
  /** All loads at their rated current. */
  readonly loadA: Outcome<{ readonly value: number; readonly span: Span }>;
  readonly inrush: Outcome<Inrush>;
  readonly inrushPasses: Outcome<InrushVerdict>;
  readonly fault: Outcome<FarFault>;
  readonly ends: Outcome<readonly EndInFault[]>;
  /** Nearest the battery first. */
  readonly above: readonly AboveCircuit[];
  /** A short right behind the fuse. */
  readonly atFuse: Outcome<ProspectiveAtDevice>;
  readonly interrupt: Outcome<{ readonly ratedA: number; readonly verdict: Comparison }>;
  readonly policies: Outcome<readonly UnderPolicy[]>;
}

/** The first that is not known, as it is; else what `make` makes of both. */
function both<A, B, T>(a: Outcome<A>, b: Outcome<B>, make: (a: A, b: B) => T): Outcome<T> {
  if (a.kind === "refused") return a;
  if (b.kind === "refused") return b;
  if (a.kind === "missing" || b.kind === "missing")
    return missing(...new Set([...(a.kind === "missing" ? a.needs : []), ...(b.kind === "missing" ? b.needs : [])]));
  return known(make(a.value, b.value));
}

function loadCurrentOf(index: CoachIndex, circuit: Circuit): CircuitProtection["loadA"] {
  const needs: string[] = [];
  let [value, lo, hi] = [0, 0, 0];
  for (const id of circuit.loads ?? []) {
    const load = index.loads.get(id);
    if (load === undefined) continue;
    const path = index.pathOf("loads", id);
    const figures = loadFiguresOf(load, nominalVOf(index), path);
    if (figures.kind !== "known") needs.push(...(figures.kind === "missing" ? figures.needs : [`${path}.currentA`]));
    else {
      value += figures.value.ratedA;
      lo += figures.value.ratedSpan.lo;
      hi += figures.value.ratedSpan.hi;
    }
  }
  return needs.length > 0 ? missing(...new Set(needs)) : known({ value, span: { lo, hi } });
}

/** The gates of this circuit's own fuse; its module's type serves where the fuse's own is not on record. */
export function circuitFuseOf(index: CoachIndex, circuit: Circuit): Outcome<FuseGates> {
  const module = circuit.module === undefined ? undefined : index.modules.get(circuit.module);
  const kind = module?.kind === undefined ? undefined : index.moduleKinds.get(module.kind);
  return fuseGatesOf(circuit.fuse, `${index.pathOf("circuits", circuit.id)}.fuse`, kind?.fuseType);
}

function aboveOf(index: CoachIndex, device: DeviceAbove, fuse: Outcome<FuseGates>, fault: FarFault): AboveCircuit {
  const gates = fuseGatesOf(device.fuse, device.path);
  const limit = protectionDistanceOf(policyOf(index.record), device.cable.isSheathed === true);
  const stated = device.cable.protection?.distanceFromSourceM;
  const distance: AboveCircuit["distance"] =
    stated === undefined
      ? missing(`${device.path}.distanceFromSourceM`)
      : known({
          valueM: figureValue(stated),
          maxM: limit.maxM,
          verdict: compareSpan(spanOf(stated, "length"), limit.maxM, "at-most"),
        });
  return { device, gates, distance, selectivity: both(fuse, gates, (low, up) => selectivityOf(low, up, fault.span)) };
}

/**
 * How is this circuit protected? Its fuse's gates, load and start against them, the short at each end and what the slowest fuse lets through against every
 * conductor in its way, the devices above it, what its fuse must be able to break, and its limits under the rule books asked (`policies`; the
 * record's own where absent). Each part is known, missing or refused by itself. Refused as a whole: `no-such-circuit`.
 */
export function protectionOf(
  index: CoachIndex,
  circuitId: string,
  policies: readonly PolicyName[] = ["record"],
): Outcome<CircuitProtection> {
  const circuit = index.circuits.get(circuitId as never);
  if (circuit === undefined) return refused("no-such-circuit", `the record has no circuit ${circuitId}`);
  const path = index.pathOf("circuits", circuit.id);
  const fuse = circuitFuseOf(index, circuit);
  const inrush = circuitInrushOf(index, circuit.id);
  const fault = faultAtFarEnd(index, circuit.id);
  const atFuse = prospectiveAtFuse(index, circuit.id);
  const interruptA = circuit.fuse?.interruptA;
  return known({
    circuit,
    path,
    fuse,
    loadA: loadCurrentOf(index, circuit),
    inrush,
    inrushPasses: both(inrush, fuse, inrushVerdict),
    fault,
    ends: both(fault, fuse, (far, gates) =>
      far.ends.map((end) => ({
        end,
        clearing: faultClearing(gates, end),
        conductors: end.conductors.flatMap((conductor) => conductorInFault(gates, end, conductor) ?? []),
      })),
    ),
    above: fault.kind === "known" ? fault.value.above.map((device) => aboveOf(index, device, fuse, fault.value)) : [],
    atFuse,
    interrupt: both(
      atFuse,
      interruptA === undefined ? missing(`${path}.fuse.interruptA`) : known(interruptA),
      (prospective, rated) => ({
        ratedA: figureValue(rated),
        verdict: compareSpan(prospective.span, spanOf(rated, "rating").lo, "at-most"),
      }),
    ),
    policies: underPolicies(index, circuit.id, policies),
  });
}
