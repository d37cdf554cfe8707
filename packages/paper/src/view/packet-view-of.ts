import { type Finding, findingWords } from "@fusebook/core/findings";
import { obstacleWords, type Plan, planWords } from "@fusebook/core/plan";
import type { Caution, ExpectedReading, Procedure, Step } from "@fusebook/core/procedure";
import { methodWords, type Test, testKindWords } from "@fusebook/core/proof";
import { showQuantity, type UnitChoice } from "@fusebook/core/quantity";
import { type CoachIndex, type Job, policyOf, type Supply } from "@fusebook/core/record";
import type { ExpectedLine } from "../document/blocks.js";
import type { ModuleChangeView, PacketView, StepView, SupplyIsolationView, TestView } from "../packet/packet-view.js";
import { bladePatch } from "./fuse-patch-of.js";
import { feedsOf, fuseNumber, moduleName, placeName } from "./names.js";
import { sourcesOf } from "./sources-of.js";
import { stripsOf } from "./strips-of.js";
import { switchCardOf } from "./switch-card-of.js";

/** What a packet is made from. `before` is the coach as found, `after` as the plan leaves it. */
export interface PacketInputs {
  readonly before: CoachIndex;
  readonly after: CoachIndex;
  readonly plan: Plan;
  readonly job?: Job;
  readonly procedure: Procedure;
  readonly tests: readonly Test[];
  /** Findings of the coach as the plan leaves it. */
  readonly findings: readonly Finding[];
  readonly stepText: (step: Step) => { readonly text: string; readonly detail?: string };
  readonly cautionText: (caution: Caution) => string;
  readonly estimate: PacketView["estimate"];
  readonly parts: PacketView["parts"];
  readonly tools: readonly string[];
  readonly pinMaps: PacketView["pinMaps"];
  readonly date: string;
  readonly id: string;
  readonly units?: UnitChoice;
}

const SECTION_TITLES: Readonly<Record<Procedure["sections"][number]["code"], string>> = {
  prepare: "Prepare",
  isolate: "Make it dead",
  exchange: "Exchange",
  energise: "Bring power back",
  prove: "Prove",
  close: "Close up",
};

const NOTICES: readonly string[] = [
  "Mains (120 or 230 V), gas and structural work are for licensed people and are no part of this job.",
  "Smoke, carbon monoxide and gas detectors are never put on a switched channel.",
  "Local rules and the makers' own instructions win over every figure in these papers.",
  "Nothing here sets up live equipment by itself: banks are set, and wires moved, only while the coach is dead.",
];

/** Words for every page of the packet. */
export function packetViewOf(inputs: PacketInputs): PacketView {
  const { before, after, plan, job } = inputs;
  const policy = policyOf(before.record);
  const units = inputs.units ?? policy.unitsShown;
  const { coach } = before.record;
  const touched = plan.modules.filter((choice) => choice.isTouched);
  const cards = touched.flatMap((choice) => {
    const module = after.modules.get(choice.module);
    const card =
      module === undefined
        ? undefined
        : switchCardOf(after, module, after.moduleKinds.get(choice.to), choice.positions, choice.enables);
    return card === undefined ? [] : [{ module: choice.module as string, card }];
  });
  const labels = stripsOf(after, new Set(touched.map((choice) => choice.module)));
  return {
    head: {
      coach: coach.name,
      date: inputs.date,
      id: inputs.id,
      paper: policy.paper,
      isInvented: coach.isInvented === true,
    },
    job: {
      title: job?.title ?? "Work on the house wiring",
      ...(coach.ownerWords === undefined ? {} : { ownerWords: coach.ownerWords }),
      ...(job?.complaint === undefined ? {} : { complaint: job.complaint }),
    },
    proposed: {
      statement: planWords(plan, before),
      modules: plan.modules.map((choice) => moduleChange(choice, before, after)),
      dims: plan.dims.map((id) => before.loads.get(id)?.name ?? id),
      unmet: plan.unmet.map((wish) => ({
        wish: before.loads.get(wish.load)?.name ?? wish.load,
        because: wish.stoppedBy.map((obstacle) => obstacleWords(obstacle, before, units)),
      })),
    },
    estimate: inputs.estimate,
    parts: inputs.parts,
    tools: inputs.tools,
    isolation: isolationOf(inputs, units),
    sections: inputs.procedure.sections.map((section) => ({
      title: SECTION_TITLES[section.code],
      steps: section.steps.map((step) =>
        stepView(
          step,
          inputs,
          cards.map((one) => one.module),
          units,
        ),
      ),
    })),
    pinMaps: inputs.pinMaps,
    switchCards: cards.map((one) => one.card),
    fuseChanges: plan.fuses.map((change) => {
      const circuit = after.circuits.get(change.circuit);
      return {
        circuit: circuit === undefined ? change.circuit : circuitTitle(after, circuit.id),
        from: bladePatch(change.fromA),
        to: bladePatch(change.toA),
        because: "the new module allows no more on a channel",
      };
    }),
    strips: labels.strips,
    labelWants: labels.wants,
    tests: inputs.tests.map((test, i) => testView(test, inputs.tests[i - 1], after, units)),
    testMethods: [...new Set(inputs.tests.map((test) => test.kind))].map(
      (kind) => `${capital(testKindWords(kind))}: ${methodWords(kind)}`,
    ),
    open: inputs.findings
      .filter((finding) => finding.verdict === "open" || (finding.verdict === "fails" && finding.severity !== "note"))
      .map((finding) => {
        const words = findingWords(finding, units);
        return `${words.title}. ${words.statement}. ${words.remedy}.`;
      }),
    notices: NOTICES,
    sources: sourcesOf(inputs.findings, (finding) => findingWords(finding, units).title),
  };
}

function circuitTitle(index: CoachIndex, id: string): string {
  const circuit = index.circuits.get(id);
  if (circuit === undefined) return id;
  const module = circuit.module === undefined ? undefined : index.modules.get(circuit.module);
  return `${module === undefined ? "" : `${moduleName(index, module)} · `}${fuseNumber(circuit)} ${feedsOf(index, circuit)}`;
}

function moduleChange(choice: Plan["modules"][number], before: CoachIndex, after: CoachIndex): ModuleChangeView {
  const module = before.modules.get(choice.module);
  const to = after.moduleKinds.get(choice.to);
  const blocks = choice.enables.map((id) => to?.dimBlocks?.find((block) => block.id === id)?.name ?? id);
  const bank =
    choice.positions === undefined
      ? `bank not known yet: ${choice.positionsNeed.join(", ")}`
      : choice.positions === ""
        ? ""
        : `bank ${choice.positions}`;
  const dims = blocks.length === 0 ? "" : `${blocks.join(", ")} may dim`;
  const done = choice.isReplaced ? "Replaced" : choice.isTouched ? "Bank set anew" : "Stays as it is";
  return {
    module: module === undefined ? choice.module : moduleName(before, module),
    from: choice.from === undefined ? "not known" : choice.from,
    to: choice.to,
    does: choice.isTouched ? [done, dims, bank].filter((word) => word !== "").join("; ") : done,
  };
}

const DIMENSION = { V: "voltage", A: "current", ohm: "resistance" } as const;
const UNIT = { V: "V", A: "A", ohm: "Ω" } as const;

const expectLine = (reading: ExpectedReading, units: UnitChoice): ExpectedLine => {
  const show = (value: number) => showQuantity(value, DIMENSION[reading.unit], units);
  return {
    what: reading.what,
    value: show(reading.nominal),
    span: `${show(reading.span.lo)} to ${show(reading.span.hi)}`,
    unit: UNIT[reading.unit],
  };
};

function stepView(step: Step, inputs: PacketInputs, cards: readonly string[], units: UnitChoice): StepView {
  const { text, detail } = inputs.stepText(step);
  const card = /bank|switch/.test(step.code) && step.module !== undefined ? cards.indexOf(step.module) : -1;
  return {
    id: step.id,
    text,
    ...(detail === undefined ? {} : { detail }),
    cautions: step.cautions.map(inputs.cautionText),
    expect: step.expect.map((reading) => expectLine(reading, units)),
    lamps: step.expectLamps,
    ...(step.rollBack === undefined ? {} : { rollBack: step.rollBack }),
    ...(card < 0 ? {} : { card }),
  };
}

/** The sources of this coach in the order in which the steps open them; those the steps do not name come last, as named on record. */
function isolationOf(inputs: PacketInputs, units: UnitChoice): PacketView["isolation"] {
  const { before } = inputs;
  const steps = inputs.procedure.sections
    .filter((section) => section.code === "isolate")
    .flatMap((section) => section.steps);
  const order = steps.map((step) => step.parameters.supply).filter((id): id is string => typeof id === "string");
  const rank = (supply: Supply) =>
    order.includes(supply.id) ? order.indexOf(supply.id) : order.length + (supply.kind === "battery" ? 1 : 0);
  const supplies = [...(before.record.supplies ?? [])].sort((a, b) => rank(a) - rank(b));
  return {
    supplies: supplies.map(
      (supply): SupplyIsolationView => ({
        supply: supply.name,
        open: supply.isolation?.what ?? "not known: find it before work",
        where: placeName(before, supply.isolation?.place ?? supply.place),
        how: supply.isolation?.how ?? "",
      }),
    ),
    deadTest: steps.flatMap((step) => step.expect).map((reading) => expectLine(reading, units)),
    notes: [...new Set(steps.flatMap((step) => step.cautions).map(inputs.cautionText))],
  };
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** A test as a line of the sheet. Its place and caution stand at the first test of a circuit and are not said again. */
function testView(test: Test, before: Test | undefined, index: CoachIndex, units: UnitChoice): TestView {
  const circuit = test.circuit === undefined ? undefined : index.circuits.get(test.circuit);
  const isFirst = test.where === undefined || test.where !== before?.where;
  const load = test.load === undefined ? undefined : index.loads.get(test.load);
  const place =
    circuit === undefined
      ? (test.module ?? "")
      : circuit.module === undefined
        ? fuseNumber(circuit)
        : `${circuit.module}.${fuseNumber(circuit)}`;
  const line = {
    number: isFirst ? place : "",
    ...(isFirst && test.where !== undefined ? { where: test.where } : {}),
    what: load === undefined ? testKindWords(test.kind) : `voltage at ${load.name}`,
    ...(isFirst && (test.cautions ?? []).length > 0 ? { caution: (test.cautions ?? []).join(" ") } : {}),
  };
  const { expected } = test;
  if (test.needs.length > 0) return { ...line, expected: "not known", span: "a figure is missing", unit: "" };
  if ("said" in expected) return { ...line, expected: expected.said, span: "", unit: "" };
  const show = (value: number) => showQuantity(value, DIMENSION[expected.unit], units);
  return {
    ...line,
    expected: show(expected.nominal),
    span: `${show(expected.span.lo)} to ${show(expected.span.hi)}`,
    unit: expected.unit,
  };
}
