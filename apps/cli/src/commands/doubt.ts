import { type DoubtOptions, doubtAndNext } from "@fusebook/core/doubt";
import { indexRecord } from "@fusebook/core/record";
import { jsonText } from "../columns.js";
import { type Command, EXIT, flag, text, type Values } from "../command.js";
import { doubtJson, nextJson } from "../doubt-json.js";
import { subjectMeant } from "../doubt-names.js";
import { doubtPicture, nextPicture } from "../doubt-picture.js";
import { askedText, doubtText, isCompared, nextTable } from "../doubt-text.js";
import { Misuse } from "../misuse.js";
import { PICTURE_OPTION_HELP, PICTURE_OPTIONS, writePicture } from "../picture-output.js";
import { loadRecord, unitsOf } from "../records.js";

const MOST_SAMPLES = 100_000;
const LIST_SHOWN = 12;
const READINGS_SHOWN = 5;

function wholeNumber(values: Values, name: string, least: number, most: number): number | undefined {
  const written = text(values, name);
  if (written === undefined) return undefined;
  const value = /^\d+$/.test(written) ? Number(written) : Number.NaN;
  if (value >= least && value <= most) return value;
  throw new Misuse(`--${name} ${written}: a whole number from ${least} to ${most} is wanted`);
}

/** How likely each open verdict is to fail, and which reading would settle most for its minutes. */
export const doubt: Command = {
  name: "doubt",
  usage: "RECORD [CIRCUIT|LOAD|MODULE …]",
  about:
    "For the whole coach, a short list of what to read next: the readings that take most doubt away for each minute, over every open verdict at once. For the circuits, loads or modules named, each open verdict with its exact span, its limit, how likely it fails, and the arithmetic of every reading.",
  examples: [
    ["fusebook doubt coach.fusebook.json", "what to read next on this coach"],
    ["fusebook doubt coach.fusebook.json c1.03", "one circuit and its loads, with the arithmetic"],
    ["fusebook doubt coach.fusebook.json 'House controller' --svg doubt.svg", "one load, and its picture"],
    ["fusebook doubt coach.fusebook.json --json --samples 5000 --seed 7", "everything as data"],
  ],
  options: { seed: { type: "string" }, samples: { type: "string" }, ...PICTURE_OPTIONS },
  optionHelp: {
    seed: "which coaches are drawn, a whole number (1 where absent)",
    samples: "how many coaches are drawn from the tolerances (1000 where absent)",
    ...PICTURE_OPTION_HELP,
  },
  minPositionals: 1,
  async run({ values, positionals, io }) {
    const [file, ...subjects] = positionals as [string, ...string[]];
    const seed = wholeNumber(values, "seed", 0, 2 ** 31 - 1) ?? 1;
    const samples = wholeNumber(values, "samples", 10, MOST_SAMPLES);
    const record = await loadRecord(io, file);
    const index = indexRecord(record);
    const units = unitsOf(values, record);
    const only = subjects.map((asked) => subjectMeant(index, asked));
    const options: DoubtOptions = {
      seed,
      ...(samples === undefined ? {} : { samples }),
      ...(only.length === 0 ? {} : { only }),
    };
    const { doubts, next } = doubtAndNext(index, options);
    const compared = doubts.filter(isCompared);
    const asked = doubts.filter((one) => one.kind === "asked");
    const first = compared[0];
    if (text(values, "svg") !== undefined && compared.length === 0)
      throw new Misuse("--svg: no open verdict here compares a quantity with a limit, so there is nothing to draw");
    const drawn = await writePicture(io, values, (look) =>
      only.length > 0 && first !== undefined
        ? doubtPicture(index, first, units, look)
        : nextPicture(index, next, compared.length, look),
    );
    if (drawn === "-") return EXIT.fine;
    const width = Math.min(io.columns, 120);
    if (flag(values, "json")) {
      io.out(
        jsonText({
          record: record.id,
          coach: record.coach.name,
          seed,
          samples: samples ?? null,
          only,
          doubts: doubts.map((one) => doubtJson(one, units)),
          next: next.map((one) => nextJson(one, units)),
          ...(drawn === undefined ? {} : { picture: drawn }),
        }),
      );
      return EXIT.fine;
    }
    const name = `${record.coach.name}${record.coach.isInvented ? " (invented)" : ""}`;
    if (doubts.length === 0) {
      io.out(`${name}: nothing is open${only.length > 0 ? ` about ${only.join(", ")}` : ""}.`);
      return EXIT.fine;
    }
    io.out(
      `${name}: ${compared.length} open ${compared.length === 1 ? "verdict" : "verdicts"} that a figure decides, ${asked.length} that a look or a word answers.\n`,
    );
    if (only.length > 0) {
      for (const one of compared) io.out(`${doubtText(index, one, units, width, READINGS_SHOWN)}\n`);
    } else if (next.length > 0) {
      io.out("What to read next, by the share of a verdict's doubt taken away each minute:\n");
      io.out(`${nextTable(index, next.slice(0, LIST_SHOWN), width)}\n`);
      const lost = compared.filter(({ outlook }) => outlook === "nothing");
      if (lost.length > 0)
        io.out(
          `Nothing that can be read settles ${lost.length} of them: they lie at their limit. ${lost.map(({ finding }) => `${finding.subject.name} [${finding.code}]`).join("; ")}.\n`,
        );
    }
    if (only.length > 0) for (const one of asked) io.out(askedText(one, units));
    if (drawn !== undefined) io.out(`Picture: ${drawn}`);
    return EXIT.fine;
  },
};
