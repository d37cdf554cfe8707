import { type Finding, findingWords } from "@fusebook/core/findings";
import { allOnState, solveCoach } from "@fusebook/core/network";
import { type ProofReport, testKindWords } from "@fusebook/core/proof";
import { showQuantity, type UnitChoice } from "@fusebook/core/quantity";
import { type CoachIndex, policyOf } from "@fusebook/core/record";
import type { BookView, ProofLine } from "../book/book-view.js";
import type { Cell } from "../document/blocks.js";
import { diagramOf } from "./diagram-of.js";
import { loomOf } from "./loom-of.js";
import { mapOf } from "./map-of.js";
import { findingsBySubject } from "./margin-of.js";
import { enabledOf, modulePageOf } from "./module-page-of.js";
import { moduleName } from "./names.js";
import { openLinesOf } from "./open-lines.js";
import { shownSpan } from "./shown-figure.js";
import { sourcesOf } from "./sources-of.js";
import { wiresOf } from "./wires-of.js";

/** What a book is made from: the record as it now stands, its findings, what was proved, and the record's own text to carry along. */
export interface BookInputs {
  readonly index: CoachIndex;
  readonly findings: readonly Finding[];
  readonly proof?: ProofReport;
  /** What was changed and why, a sentence each, from the job and the difference of the records. */
  readonly changes?: BookView["changes"];
  /** The record's file as it was written; it goes into the PDF byte for byte. */
  readonly recordBytes: Uint8Array;
  readonly date: string;
  readonly id: string;
  readonly units?: UnitChoice;
}

/** Words for every page of the as-built book. */
export function bookViewOf(inputs: BookInputs): BookView {
  const { index, findings } = inputs;
  const policy = policyOf(index.record);
  const units = inputs.units ?? policy.unitsShown;
  const state = allOnState(index);
  const solved = solveCoach(index, state);
  const allOn = solved.kind === "known" ? solved.value : undefined;
  const coach = { index, findings, bySubject: findingsBySubject(findings), allOn, units };
  const { record } = index;
  const modules = record.modules ?? [];
  return {
    head: {
      coach: record.coach.name,
      date: inputs.date,
      id: inputs.id,
      paper: policy.paper,
      isInvented: record.coach.isInvented === true,
    },
    facts: coverFacts(inputs),
    loom: loomOf(coach),
    map: mapOf(index),
    diagram: diagramOf(index, units),
    stateName: state.name,
    modules: modules.map((module) => modulePageOf(coach, module)),
    wires: wiresOf(index, units),
    settings: modules.map((module) => {
      const kind = module.kind === undefined ? undefined : index.moduleKinds.get(module.kind);
      const enables = enabledOf(index, module);
      const blocks = (kind?.dimBlocks ?? [])
        .filter((block) => enables?.includes(block.id))
        .map((block) => block.name ?? block.id);
      const dims =
        (kind?.dimBlocks ?? []).length === 0
          ? "the kind does not dim"
          : enables === undefined
            ? "not known"
            : blocks.join("; ") || "nothing";
      const address: Cell =
        module.address === undefined
          ? "?"
          : module.answersTo === undefined || module.answersTo === module.address
            ? String(module.address)
            : { text: String(module.address), under: `answers to ${module.answersTo}` };
      return {
        module: moduleName(index, module),
        kind: kind?.name ?? "?",
        address,
        positions: module.positionsFound ?? "?",
        dims,
      };
    }),
    changes: inputs.changes ?? [],
    open: openLinesOf(findings, units),
    proof: inputs.proof === undefined ? undefined : proofOf(inputs.proof, units),
    sources: sourcesOf(findings, (finding) => findingWords(finding, units).title),
    record: { name: `${record.id}.fusebook.json`, bytes: inputs.recordBytes },
  };
}

function coverFacts(inputs: BookInputs): (readonly [string, Cell])[] {
  const { coach } = inputs.index.record;
  const { record } = inputs.index;
  const count = (items: readonly unknown[] | undefined, one: string, many: string) =>
    `${items?.length ?? 0} ${items?.length === 1 ? one : many}`;
  const facts: (readonly [string, Cell])[] = [];
  if (coach.yearBuilt !== undefined) facts.push(["Built", String(coach.yearBuilt)]);
  facts.push([
    "House voltage",
    coach.nominalV === undefined ? { text: "12 V", under: "taken as 12 V: nobody has said" } : `${coach.nominalV} V`,
  ]);
  if (coach.keptAt !== undefined) facts.push(["Kept at", coach.keptAt]);
  facts.push([
    "Holds",
    [
      count(record.modules, "module", "modules"),
      count(record.circuits, "circuit", "circuits"),
      count(record.loads, "load", "loads"),
    ].join(", "),
  ]);
  return facts;
}

function proofOf(report: ProofReport, units: UnitChoice): NonNullable<BookView["proof"]> {
  const dimension = { V: "voltage", A: "current" } as const;
  const lines = report.judged.map(({ test, verdict, read }): ProofLine => {
    const { expected } = test;
    const show = (value: number) =>
      "said" in expected ? String(value) : showQuantity(value, dimension[expected.unit], units);
    return {
      test: `${test.where ?? test.circuit ?? test.module ?? test.id}: ${testKindWords(test.kind)}`,
      expected: "said" in expected ? expected.said : shownSpan(expected.span, dimension[expected.unit], units),
      read: read === undefined ? "–" : typeof read.value === "number" ? show(read.value) : read.value,
      verdict,
    };
  });
  const held = report.judged.filter((one) => one.verdict === "holds").length;
  return {
    lines,
    summary: [
      `${held} of ${report.judged.length} tests held. ${report.unproved.length} are not proved.`,
      report.maySign
        ? "Nothing stood in the way of signing."
        : `Not to be signed: ${report.signingStoppedBy.join("; ")}.`,
    ],
  };
}
