import { type Finding, findingWords } from "@fusebook/core/findings";
import { type Obstacle, obstacleWords, type Plan } from "@fusebook/core/plan";
import {
  cautionWords,
  type ExpectedReading,
  type Procedure,
  type Step,
  sectionWords,
  stepWords,
  toolsOf,
  wireWorkOf,
} from "@fusebook/core/procedure";
import type { Test } from "@fusebook/core/proof";
import { showQuantity, type UnitChoice } from "@fusebook/core/quantity";
import { type CoachIndex, type Job, policyOf } from "@fusebook/core/record";
import type { ExpectedLine } from "../document/blocks.js";
import type { ModuleChangeView, PacketView, StepView, SupplyIsolationView } from "../packet/packet-view.js";
import { bladePatch } from "./fuse-patch-of.js";
import { moneyOf } from "./money-of.js";
import { feedsOf, fuseNumber, moduleName, placeName } from "./names.js";
import { openLinesOf } from "./open-lines.js";
import { pinMapsOf } from "./pin-maps-of.js";
import { shownSpan } from "./shown-figure.js";
import { sourcesOf } from "./sources-of.js";
import { stripsOf } from "./strips-of.js";
import { switchCardOf } from "./switch-card-of.js";
import { DIMENSION, testsOn } from "./tests-on.js";
import { fuseBecause, wireChangesOf } from "./wire-changes-of.js";

/** What a packet is made from. `before` is the coach as found, `after` as the plan leaves it. */
export interface PacketInputs {
  readonly before: CoachIndex;
  readonly after: CoachIndex;
  readonly plan: Plan;
  readonly job?: Job;
  readonly procedure: Procedure;
  /** Tests of the coach as the plan leaves it; the sheet holds those of the modules that the plan touches. */
  readonly tests: readonly Test[];
  /** Findings of the coach as the plan leaves it. */
  readonly findings: readonly Finding[];
  readonly date: string;
  readonly id: string;
  readonly units?: UnitChoice;
}

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
  const cardAt = new Map(cards.map((one, i) => [one.module, i]));
  const work = wireWorkOf(before, plan);
  const worked = new Set([...touched.map((choice) => choice.module), ...work.modules]);
  const labels = stripsOf(after, worked);
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
      statement: statementOf(plan, before),
      modules: plan.modules.map((choice) => moduleChange(choice, before, after)),
      dims: plan.dims.map((id) => before.loads.get(id)?.name ?? id),
      unmet: plan.unmet.map((wish) => ({
        wish: before.loads.get(wish.load)?.name ?? wish.load,
        because: firstOfEach(wish.stoppedBy).map((obstacle) => obstacleWords(obstacle, before, units)),
      })),
    },
    ...moneyOf(plan, before),
    tools: toolsOf(inputs.procedure),
    isolation: isolationOf(inputs),
    sections: inputs.procedure.sections.map((section) => ({
      code: section.code,
      title: sectionWords(section.code),
      steps: section.steps.map((step) => stepView(step, inputs, cardAt, units)),
    })),
    pinMaps: pinMapsOf(before, after, plan),
    switchCards: cards.map((one) => one.card),
    fuseChanges: plan.fuses.map((change) => {
      const circuit = after.circuits.get(change.circuit);
      return {
        circuit: circuit === undefined ? change.circuit : circuitTitle(after, circuit.id),
        from: bladePatch(change.fromA),
        to: bladePatch(change.toA),
        because: fuseBecause(change.because),
      };
    }),
    wireChanges: wireChangesOf(plan, before, after),
    strips: labels.strips,
    labelWants: labels.wants,
    ...testsOn(inputs.tests, worked, fedAnew(plan, after), after, units),
    open: openLinesOf(
      inputs.findings.filter((finding) => finding.severity !== "note"),
      units,
    ),
    notices: NOTICES,
    sources: sourcesOf(inputs.findings, (finding) => findingWords(finding, units).title),
  };
}

/** Circuits that the plan makes: a load's feed of its own is on no module. */
const fedAnew = (plan: Plan, after: CoachIndex): ReadonlySet<string> =>
  new Set(plan.steadyFeeds.flatMap((feed) => after.circuitOfLoad.get(feed.load)?.id ?? []));

/** The plan for the owner: how much is changed, what it gives, how long the coach is dark; the table on the next page says it module by module. */
function statementOf(plan: Plan, before: CoachIndex): string[] {
  const count = (number: number, one: string, many: string) => `${number} ${number === 1 ? one : many}`;
  const replaced = plan.modules.filter((choice) => choice.isReplaced).length;
  const set = plan.modules.filter((choice) => choice.isTouched && !choice.isReplaced).length;
  const work = [
    ...(replaced === 0 ? [] : [`${count(replaced, "module is", "modules are")} replaced`]),
    ...(set === 0 ? [] : [`the switches of ${count(set, "module are", "modules are")} set anew`]),
    ...(plan.fuses.length === 0 ? [] : [`${count(plan.fuses.length, "fuse is", "fuses are")} changed`]),
    ...(plan.wiresMoved === 0 ? ["no circuit is moved"] : []),
    ...(plan.moves.length === 0
      ? []
      : [`${count(plan.moves.length, "circuit is moved to another channel", "circuits are moved to other channels")}`]),
    ...(plan.steadyFeeds.length === 0
      ? []
      : [`${count(plan.steadyFeeds.length, "load gets a feed of its own", "loads get feeds of their own")}`]),
    ...(plan.rewires.length === 0
      ? []
      : [`${count(plan.rewires.length, "circuit gets a thicker wire", "circuits get thicker wires")}`]),
  ].join(", ");
  const names = (ids: readonly string[]) => ids.map((id) => before.loads.get(id)?.name ?? id).join(", ");
  return [
    `${work.charAt(0).toUpperCase()}${work.slice(1)}. ${count(plan.dims.length, "load", "loads")} asked for will dim. The work takes about ${plan.minutes} minutes.`,
    ...(plan.unmet.length === 0
      ? []
      : [`${count(plan.unmet.length, "wish is", "wishes are")} not met; the next page says why.`]),
    ...(plan.spoiled.length === 0
      ? []
      : [`Stay on a dimmed channel though they must not dim: ${names(plan.spoiled)}.`]),
    ...(plan.detectors.length === 0
      ? []
      : [
          `Without power during the work: ${names(plan.detectors)}. Nobody sleeps in the coach until they have been tested again.`,
        ]),
  ];
}

/** One reason of each sort: what holds for one kind of module mostly holds for the next, and the owner reads it once. */
function firstOfEach(obstacles: readonly Obstacle[]): Obstacle[] {
  const seen = new Set<string>();
  return obstacles.filter((obstacle) => {
    const { channel, circuit, why } = obstacle.parameters;
    const key = [obstacle.code, channel, circuit, why].join("|");
    return !seen.has(key) && seen.add(key) !== undefined;
  });
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

const UNIT = { V: "V", A: "A", ohm: "Ω" } as const;

const expectLine = (reading: ExpectedReading, units: UnitChoice): ExpectedLine => {
  const show = (value: number) => showQuantity(value, DIMENSION[reading.unit], units);
  return {
    what: reading.what,
    value: show(reading.nominal),
    span: shownSpan(reading.span, DIMENSION[reading.unit], units),
    unit: UNIT[reading.unit],
  };
};

function stepView(step: Step, inputs: PacketInputs, cardAt: ReadonlyMap<string, number>, units: UnitChoice): StepView {
  const { text, detail } = stepWords(step, inputs.before, inputs.after);
  const isBank = step.code === "set-bank" || step.code === "set-bank-unknown";
  const card = isBank && step.module !== undefined ? cardAt.get(step.module) : undefined;
  return {
    id: step.id,
    text,
    ...(detail === undefined ? {} : { detail }),
    cautions: step.cautions.map(cautionWords),
    expect: step.expect.map((reading) => expectLine(reading, units)),
    lamps: step.expectLamps,
    ...(step.rollBack === undefined ? {} : { rollBack: step.rollBack }),
    ...(card === undefined ? {} : { card }),
  };
}

/** The sources of this coach in the order in which the steps open them. */
function isolationOf(inputs: PacketInputs): SupplyIsolationView[] {
  const { before } = inputs;
  const steps = inputs.procedure.sections.find((section) => section.code === "isolate")?.steps ?? [];
  const ids = steps.map((step) => step.parameters.supply).filter((id): id is string => typeof id === "string");
  return [...new Set(ids)].flatMap((id): SupplyIsolationView[] => {
    const supply = before.supplies.get(id);
    if (supply === undefined) return [];
    const open = supply.isolation?.what ?? "not on record: find it before work";
    const where = placeName(before, supply.isolation?.place ?? supply.place);
    return [{ supply: supply.name, open, where, how: supply.isolation?.how ?? "" }];
  });
}
