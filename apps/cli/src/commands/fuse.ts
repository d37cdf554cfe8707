import {
  type CircuitProtection,
  POLICY_NAMES,
  type PolicyName,
  protectionOf,
  totalsOf,
} from "@fusebook/core/protection";
import { type CoachIndex, indexRecord } from "@fusebook/core/record";
import { jsonText } from "../columns.js";
import { type Command, EXIT, flag, text, type Values } from "../command.js";
import { protectionJson } from "../fuse-json.js";
import { fusePicture, pictureData } from "../fuse-picture.js";
import { allText, protectionText } from "../fuse-text.js";
import { totalsJson, totalsText } from "../fuse-totals.js";
import { hasFailed, whyNot } from "../fuse-words.js";
import type { Io } from "../io.js";
import { Misuse } from "../misuse.js";
import { PICTURE_OPTION_HELP, PICTURE_OPTIONS, writePicture } from "../picture-output.js";
import { loadRecord, type Units, unitsOf } from "../records.js";
import { circuitMeant } from "../solve-state.js";

const isPolicy = (name: string): name is PolicyName => (POLICY_NAMES as readonly string[]).includes(name);

function policiesOf(values: Values): PolicyName[] {
  const asked = (text(values, "policies") ?? "record")
    .split(",")
    .map((name) => name.trim())
    .filter((name) => name !== "");
  const wrong = asked.find((name) => !isPolicy(name));
  if (wrong !== undefined || asked.length === 0)
    throw new Misuse(`--policies ${wrong ?? ""}: wanted some of ${POLICY_NAMES.join(", ")}, with commas`);
  return asked.filter(isPolicy);
}

/** What the engine says of a circuit that is on the record: it refuses no other. */
function toldOf(index: CoachIndex, id: string, policies: readonly PolicyName[]): CircuitProtection {
  const found = protectionOf(index, id, policies);
  if (found.kind !== "known") throw new Misuse(`${id}: not on the record`);
  return found.value;
}

/** What runs through the shared parts of the coach. */
function totals(io: Io, index: CoachIndex, head: object, coach: string, units: Units, asJson: boolean): number {
  const found = totalsOf(index);
  if (asJson) io.out(jsonText({ ...head, ...(found.kind === "known" ? totalsJson(found.value) : found) }));
  else
    io.out(`${coach}\n${found.kind === "known" ? totalsText(index, found.value, units, io.columns) : whyNot(found)}`);
  return found.kind === "known" ? EXIT.fine : EXIT.findings;
}

/** One circuit's fuse against its load, its start, a short, its conductors and the devices before it. */
export const fuse: Command = {
  name: "fuse",
  usage: "RECORD (CIRCUIT | --all | --totals)",
  about:
    "Tells when a circuit's fuse may and must open, whether it lets the loads start, what a dead short draws at the far end and whether the fuse opens before any wire is spoiled, whether the fuses before it stay whole, and the wires' limits under one rule book or several.",
  examples: [
    ["fusebook fuse coach.fusebook.json c1.04", "one circuit, by its id, label, name or load"],
    ["fusebook fuse coach.fusebook.json 'PICTURE LT' --svg picture-lt.svg", "and its curves as a picture"],
    ["fusebook fuse coach.fusebook.json c1.04 --policies nec,marine,road-vehicle", "the wires' limits side by side"],
    ["fusebook fuse coach.fusebook.json --all", "every circuit in a line"],
    [
      "fusebook fuse coach.fusebook.json --totals",
      "modules, feeders and bars in the busy evening and with everything on",
    ],
  ],
  options: { all: { type: "boolean" }, totals: { type: "boolean" }, policies: { type: "string" }, ...PICTURE_OPTIONS },
  optionHelp: {
    all: "every circuit, one line each",
    totals: "what modules, feeders and bars carry, and each module's demand",
    policies: `rule books for the wires' limits, with commas: ${POLICY_NAMES.join(", ")}; record where absent`,
    ...PICTURE_OPTION_HELP,
  },
  minPositionals: 1,
  maxPositionals: 2,
  async run({ values, positionals, io }) {
    const [file, asked] = positionals as [string, string | undefined];
    const isAll = flag(values, "all");
    const isTotals = flag(values, "totals");
    if ([isAll, isTotals, asked !== undefined].filter(Boolean).length !== 1)
      throw new Misuse("name one circuit, or say --all for every one, or --totals");
    if (asked === undefined && text(values, "svg") !== undefined)
      throw new Misuse("--svg: a picture is of one circuit; name it");
    const policies = policiesOf(values);
    const record = await loadRecord(io, file);
    const index = indexRecord(record);
    const units = unitsOf(values, record);
    const coach = `${record.coach.name}${record.coach.isInvented ? " (invented)" : ""}`;
    const head = { record: record.id, coach: record.coach.name };
    if (isTotals) return totals(io, index, head, coach, units, flag(values, "json"));
    if (asked === undefined) {
      const all = [...index.circuits.values()]
        .filter((circuit) => circuit.isSpare !== true)
        .map((circuit) => toldOf(index, circuit.id, policies));
      if (flag(values, "json")) io.out(jsonText({ ...head, circuits: all.map(protectionJson) }));
      else
        io.out(
          all.length === 0
            ? `${coach}: no circuit on the record yet; add one, or import a survey`
            : `${coach}\n${allText(index, all, units, io.columns)}\n? : not told; ask for the circuit by itself to see what it needs.`,
        );
      return all.some(hasFailed) ? EXIT.findings : EXIT.fine;
    }
    const told = toldOf(index, circuitMeant(index, "CIRCUIT", asked), policies);
    const picture = await writePicture(io, values, (look) => fusePicture(pictureData(index, told, coach, units), look));
    if (flag(values, "json")) io.out(jsonText({ ...head, ...protectionJson(told) }));
    else if (picture !== "-") {
      io.out(`${coach}\n${protectionText({ index, told, units, width: io.columns })}`);
      if (picture !== undefined) io.out(`\nPicture: ${picture}`);
    }
    return hasFailed(told) ? EXIT.findings : EXIT.fine;
  },
};
