import {
  type ConductorInFault,
  conductorInFault,
  type FaultConductor,
  type FaultEnd,
  type FuseGates,
} from "../protection/index.js";
import type { Source } from "../quantity/index.js";
import type { Cable, CoachIndex, WireRun } from "../record/index.js";
import type { Said } from "./define-rule.js";
import type { Evidence } from "./finding.js";
import { limitLeans } from "./leans.js";
import type { Leaned } from "./settle.js";

/** The conductor that comes out worst in a short, as a section wanted and a section got. */
export interface ConductorTold {
  readonly verdict: Said["verdict"];
  readonly part: FaultConductor["part"];
  readonly limit: NonNullable<Said["limit"]>;
  readonly parameters: Readonly<Record<string, number>>;
  readonly evidence: readonly Evidence[];
  readonly source: Source;
  leansOn(index: CoachIndex): Leaned[];
}

const RANK = { fails: 0, open: 1, holds: 2 } as const;

/** The object at the path of a conductor: a circuit's run, a load's tail or a cable. */
function runAt(index: CoachIndex, { part, id, path }: FaultConductor): WireRun | Cable | undefined {
  if (part === "tail") return index.loads.get(id as never)?.tail;
  const circuit = index.circuits.get(id as never);
  if (path.endsWith(".out")) return circuit?.out;
  return path.endsWith(".return") ? circuit?.return : index.cables.get(id as never);
}

/**
 * Which of these conductors fares worst in a short at this end? As the section that what the slowest fuse lets through wants (at the conductor's own factor
 * k) against the section it has; the doubt about k counts as doubt about the section. Undefined where no size is known, or where the fuse may not open at
 * all: that is told by a rule of its own.
 */
export function worstInFault(
  fuse: FuseGates,
  end: FaultEnd,
  conductors: readonly FaultConductor[],
): ConductorTold | undefined {
  const told = conductors.flatMap((conductor) => conductorInFault(fuse, end, conductor) ?? []);
  const worst = told.sort((a, b) => RANK[a.verdict] - RANK[b.verdict] || nearness(b) - nearness(a))[0];
  if (worst === undefined || !Number.isFinite(worst.letThroughSpan.hi)) return undefined;
  const { conductor, letThroughA2s, letThroughSpan, limitSpan } = worst;
  if (conductor.withstand.kind !== "known") return undefined;
  const { factor, areaMm2, source, initialC } = conductor.withstand.value;
  const section = (jouleA2s: number) => Math.sqrt(jouleA2s) / factor;
  const wantedMm2 = section(letThroughA2s);
  return {
    verdict: worst.verdict,
    part: conductor.part,
    limit: { value: wantedMm2, unit: "mm2", sense: "at-least" },
    parameters: {
      got: areaMm2,
      gotLo: section(limitSpan.lo),
      gotHi: section(limitSpan.hi),
      limit: wantedMm2,
      limitLo: section(letThroughSpan.lo),
      limitHi: section(letThroughSpan.hi),
      shortA: end.currentA,
    },
    evidence: [
      { path: conductor.path, label: "section", unit: "mm2", value: areaMm2 },
      { path: conductor.path, label: "insulation", unit: "C", value: initialC },
      { path: conductor.path, label: "short-circuit-current", unit: "A", value: end.currentA, span: end.span },
    ],
    source,
    leansOn: (index) => {
      const run = runAt(index, conductor);
      const wouldSettle = run?.insulationC === undefined ? ["insulationC"] : [];
      return run === undefined ? [] : limitLeans(run, conductor.path, { wouldSettle });
    },
  };
}

const nearness = (one: ConductorInFault): number => one.letThroughA2s / one.limitA2s;
