import {
  type CircuitDimming,
  type DimmingOptions,
  dimmingOf,
  lightExponentOf,
  type ModuleDimming,
  moduleDimming,
} from "@fusebook/core/dimming";
import type { Outcome } from "@fusebook/core/quantity";
import { type CoachIndex, indexRecord, type ModuleKind, policyOf } from "@fusebook/core/record";
import { columns, jsonText } from "../columns.js";
import { type Command, EXIT, flag, text } from "../command.js";
import { knownRamps, type RampPicture, rampPicture } from "../dim-picture.js";
import { CIRCUIT_HEADS, circuitRows, circuitText, kindLine, moduleText } from "../dim-text.js";
import { Misuse } from "../misuse.js";
import { meantBy } from "../nearest.js";
import { PICTURE_OPTION_HELP, PICTURE_OPTIONS, writePicture } from "../picture-output.js";
import { loadRecord, unitsOf } from "../records.js";

const CAUTION =
  "Caution: a dimmed channel is never for motors, pumps, valves, heaters, outlets, electronics or detectors; power off before a switch of the bank is moved.";

/** Something that can be asked about: a circuit or a module. */
interface Target {
  readonly id: string;
  readonly names: readonly string[];
  readonly what: "circuit" | "module";
}

function targetsOf(index: CoachIndex): Target[] {
  const said = (...names: (string | undefined)[]) => names.filter((name): name is string => Boolean(name));
  return [
    ...[...index.modules.values()].map((module) => ({
      id: module.id as string,
      names: said(module.name),
      what: "module" as const,
    })),
    ...[...index.circuits.values()].map((circuit) => ({
      id: circuit.id as string,
      names: [
        ...said(circuit.name, circuit.label, circuit.fusePosition?.name),
        ...(circuit.loads ?? []).flatMap((id) => said(id, index.loads.get(id)?.name)),
      ],
      what: "circuit" as const,
    })),
  ];
}

function targetOf(index: CoachIndex, asked: string): Target {
  const meant = meantBy(asked, targetsOf(index));
  if ("found" in meant) return meant.found;
  const near = meant.nearest.map(({ id, names }) => (names[0] === undefined ? id : `${id} (${names[0]})`));
  throw new Misuse(
    `${asked}: the record has no circuit, load or module of that name${near.length > 0 ? `; the nearest are ${near.join(", ")}` : `; it has ${index.modules.size > 0 ? `modules ${[...index.modules.keys()].join(", ")}` : "no modules"}; without a name every circuit is listed`}`,
  );
}

function kindAsked(index: CoachIndex, asked: string | undefined): ModuleKind | undefined {
  if (asked === undefined) return undefined;
  const kinds = [...index.moduleKinds.values()].map((kind) => ({ id: kind.id as string, names: [kind.name], kind }));
  const meant = meantBy(asked, kinds);
  if ("found" in meant) return meant.found.kind;
  throw new Misuse(
    `--as ${asked}: the record has no such kind; it has ${kinds.map(({ id }) => id).join(", ") || "none"}`,
  );
}

function stepsAsked(asked: string | undefined): number | undefined {
  if (asked === undefined) return undefined;
  const steps = Number(asked);
  if (!Number.isInteger(steps) || steps < 2 || steps > 64)
    throw new Misuse(`--steps ${asked}: wanted a whole number from 2 to 64`);
  return steps;
}

const answerOf = <T>(outcome: Outcome<T>): T => {
  if (outcome.kind === "known") return outcome.value;
  throw new Misuse(outcome.kind === "missing" ? `not known: needs ${outcome.needs.join(", ")}` : outcome.because);
};

/** Is anything wrong with dimming this: a steady load among lamps, a rating too small, flicker above low risk? */
const isTroubled = ({ suitability, rating, loads }: CircuitDimming): boolean =>
  suitability.isMixed ||
  (suitability.may !== "no" &&
    ((rating.kind === "known" && rating.value.verdict === "fails") ||
      loads.some(({ flicker }) => flicker.kind === "known" && flicker.value.lowRisk === "fails")));

function pictureOfCircuit(index: CoachIndex, one: CircuitDimming, kind: ModuleKind | undefined): RampPicture {
  const circuit = index.circuits.get(one.circuit);
  const ramp = answerOf(one.ramp);
  const exponents = one.loads.flatMap(({ load }) => {
    const exponent = lightExponentOf(load.class);
    return exponent.kind === "known" ? [exponent.value] : [];
  });
  return {
    title: `${circuit?.name ?? circuit?.label ?? one.circuit}: a ramp that looks even`,
    subtitle: `${one.circuit}, ${kindLine(kind, policyOf(index.record).unitsShown)}`,
    ramps: [{ label: one.loads.map(({ load }) => load.name).join(", "), ramp }],
    lowestDutyRatio: one.lowestDutyRatio.kind === "known" ? one.lowestDutyRatio.value : undefined,
    lightExponent: exponents.length === 0 ? 1 : Math.min(...exponents),
  };
}

function pictureOfModule(index: CoachIndex, one: ModuleDimming): RampPicture {
  const ramps = knownRamps(one.ramps);
  if (ramps.length === 0) answerOf(one.ramps.led);
  return {
    title: `${index.modules.get(one.module)?.name ?? one.module}: ramps that look even`,
    subtitle: kindLine(one.kind, policyOf(index.record).unitsShown),
    ramps,
    lowestDutyRatio: ramps[0]?.ramp.steps[0]?.dutyRatio,
    lightExponent: 1,
  };
}

/** May it be dimmed, how does it look, what does it carry: a circuit, a module or the whole coach. */
export const dim: Command = {
  name: "dim",
  usage: "RECORD [CIRCUIT|MODULE] [--as KIND] [--steps N] [--svg FILE]",
  about:
    "Says of each load whether it may be dimmed and why, whether it flickers (IEEE 1789), the lowest duty worth using, power and brightness against duty, a button ramp that looks even, and what the wire carries while dimmed.",
  examples: [
    ["fusebook dim coach.fusebook.json", "every load in a line"],
    ["fusebook dim coach.fusebook.json c2.01 --as d8", "one circuit as it would be on another kind of module"],
    [
      "fusebook dim coach.fusebook.json m2 --as d8 --svg ramp.svg",
      "a module: blocks, ramps, circuits; the ramp as a picture",
    ],
  ],
  options: {
    as: { type: "string" },
    steps: { type: "string" },
    ...PICTURE_OPTIONS,
  },
  optionHelp: {
    as: "judge on this kind of module instead of the one that is fitted",
    steps: "presses from lowest to full; 8 where absent",
    ...PICTURE_OPTION_HELP,
  },
  minPositionals: 1,
  maxPositionals: 2,
  async run({ values, positionals, io }) {
    const record = await loadRecord(io, positionals[0] as string);
    const index = indexRecord(record);
    const units = unitsOf(values, record);
    const kind = kindAsked(index, text(values, "as"));
    const options: DimmingOptions = { kind, steps: stepsAsked(text(values, "steps")) };
    const svg = text(values, "svg");
    const asJson = flag(values, "json");
    const draw = (picture: () => RampPicture) => writePicture(io, values, (look) => rampPicture(picture(), look));
    const asked = positionals[1];
    if (asked === undefined) {
      if (svg !== undefined) throw new Misuse("--svg: name a circuit or a module, whose ramp is to be drawn");
      const circuits = [...index.circuits.keys()].map((id) =>
        answerOf(dimmingOf(index, id, { ...options, isBrief: true })),
      );
      if (asJson) io.out(jsonText({ record: record.id, kind: kind?.id, circuits }));
      else io.out(`${columns([[...CIRCUIT_HEADS], ...circuitRows(index, circuits)], io.columns, [3])}\n\n${CAUTION}`);
      return circuits.some(isTroubled) ? EXIT.findings : EXIT.fine;
    }
    const target = targetOf(index, asked);
    if (target.what === "module") {
      const one = answerOf(moduleDimming(index, target.id, { ...options, isBrief: !asJson }));
      await draw(() => pictureOfModule(index, one));
      if (svg !== "-")
        io.out(
          asJson
            ? jsonText({ record: record.id, ...one, kind: one.kind?.id })
            : `${moduleText(index, one, units, io.columns)}\n\n${CAUTION}`,
        );
      return one.circuits.some(isTroubled) ? EXIT.findings : EXIT.fine;
    }
    const one = answerOf(dimmingOf(index, target.id, options));
    const itsKind = one.kind === undefined ? undefined : index.moduleKinds.get(one.kind);
    await draw(() => pictureOfCircuit(index, one, itsKind));
    if (svg !== "-")
      io.out(
        asJson
          ? jsonText({ record: record.id, ...one })
          : `${circuitText(index, one, itsKind, units, io.columns)}\n\n${CAUTION}`,
      );
    return isTroubled(one) ? EXIT.findings : EXIT.fine;
  },
};
