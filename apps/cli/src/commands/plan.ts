import type { Plan } from "@fusebook/core/plan";
import { type CoachIndex, indexRecord, type Job, policyOf, writeRecord } from "@fusebook/core/record";
import { jsonText, wrap } from "../columns.js";
import { type Command, EXIT, flag, text, type Values } from "../command.js";
import type { Io } from "../io.js";
import { Misuse } from "../misuse.js";
import { PICTURE_OPTION_HELP, PICTURE_OPTIONS, writePicture } from "../picture-output.js";
import { askedJob } from "../plan-asked.js";
import { formAsked, modelOf } from "../plan-export.js";
import { loadMeant } from "../plan-names.js";
import { ASKED_HELP, ASKED_OPTIONS, PICK_HELP } from "../plan-options.js";
import { jobOf, planMeant } from "../plan-pick.js";
import { frontPicture } from "../plan-picture.js";
import { recordWith } from "../plan-record.js";
import { type Found, searchPlans } from "../plan-search.js";
import { cutLines, frontTable, planLines, uncheckedLine, unmetLines } from "../plan-text.js";
import { explainWish } from "../plan-why.js";
import { loadRecord } from "../records.js";

interface Told {
  readonly index: CoachIndex;
  readonly found: Found;
  readonly chosen: Plan | undefined;
  readonly isWhole: boolean;
}

function tell(io: Io, { index, found, chosen, isWhole }: Told): void {
  const currency = policyOf(index.record).currency;
  const width = Math.min(io.columns, 110) - 2;
  if (found.plans.length > 0) io.out(frontTable(found, currency, io.columns, isWhole));
  const told = chosen ?? found.plans.find((each) => each.id === found.picks[0]?.plan);
  if (told !== undefined) {
    io.out("");
    for (const line of planLines(told, index, currency)) io.out(line);
    const unmet = unmetLines(told, index, width);
    if (unmet.length > 0) io.out("\nWhy not more");
    for (const line of unmet) io.out(`  ${line}`);
    if (unmet.length > 0) io.out("  --why LOAD says what is in each other's way, and the cheapest way out");
  }
  for (const line of cutLines(found, found.isStopped))
    io.out(
      `\n${wrap(line, width)
        .map((each) => each.trimEnd())
        .join("\n")}`,
    );
}

async function exportModel(io: Io, values: Values, index: CoachIndex, job: Job | undefined, file: string | undefined) {
  const form = text(values, "export") as string;
  const write = formAsked(form);
  if (file === undefined)
    throw new Misuse(
      `--export ${form}: name the file to write after the record, as in coach.fusebook.json plan.${form}`,
    );
  const milp = modelOf(index, job);
  await io.write(file, write(milp), flag(values, "replace"));
  if (file === "-") return EXIT.fine;
  const size = { columns: milp.columns.length, rows: milp.rows.length };
  io.out(
    flag(values, "json")
      ? jsonText({ record: index.record.id, output: file, form, ...size })
      : `${file}: ${size.columns} columns, ${size.rows} rows; least is best, the wish value counts as negative cost`,
  );
  return EXIT.fine;
}

/** Which modules to replace with what, every bank option, every fuse, every moved wire, and why not more. */
export const plan: Command = {
  name: "plan",
  usage: "RECORD [--front] [--pick PLAN -o OUT] | RECORD --why LOAD | RECORD --export lp|mps FILE",
  about:
    "Finds the plans none of which is beaten on cost, wishes met and wires moved at once, each proved and each checked by all findings, and says which rule stops each wish that stays unmet. With --pick the plan is written into the record's job.",
  examples: [
    ["fusebook plan coach.fusebook.json", "the named picks, and the first of them line by line"],
    ["fusebook plan coach.fusebook.json --front --svg front.svg", "every plan that no other beats, with the picture"],
    ["fusebook plan coach.fusebook.json --budget 900 --lock m3 --forbid moves", "what can be had so"],
    [
      'fusebook plan coach.fusebook.json --why "Bath ceiling"',
      "what is in the way of one wish, and the cheapest way out",
    ],
    [
      "fusebook plan coach.fusebook.json --pick most-light -o planned.fusebook.json",
      "choose one; the record after the work is written with --after",
    ],
    ["fusebook plan coach.fusebook.json --export lp plan.lp", "the model, for any other solver"],
  ],
  options: {
    front: { type: "boolean" },
    pick: { type: "string" },
    ...ASKED_OPTIONS,
    why: { type: "string" },
    export: { type: "string" },
    output: { type: "string", short: "o" },
    after: { type: "boolean" },
    ...PICTURE_OPTIONS,
  },
  optionHelp: {
    front: "every plan on the front, not only the named picks",
    pick: PICK_HELP,
    ...ASKED_HELP,
    why: "a load: the rules that stop its wish, the smallest set of things in each other's way, the cheapest way out",
    export: "lp or mps: writes the model to the file named after the record, and looks for no plan",
    output: "where to write the record with the plan chosen",
    after: "write the record as it will be when the work is done",
    ...PICTURE_OPTION_HELP,
  },
  minPositionals: 1,
  maxPositionals: 2,
  async run({ values, positionals, io }) {
    const [path, file] = positionals as [string, string | undefined];
    const isExport = text(values, "export") !== undefined;
    if (file !== undefined && !isExport)
      throw new Misuse(`too many words (${file}): a second file is only for --export lp|mps`);
    const record = await loadRecord(io, path);
    const index = indexRecord(record);
    const asked = askedJob(index, jobOf(record, text(values, "job")), values);
    if (isExport) return exportModel(io, values, index, asked, file);
    const why = text(values, "why");
    if (why !== undefined) return explainWish(io, values, index, asked, loadMeant(index, "why", why));
    const meant = text(values, "pick");
    const output = text(values, "output");
    if (output !== undefined && meant === undefined) throw new Misuse("say which plan to write: --pick NAME");
    const found = await searchPlans(index, asked, io);
    const chosen = meant === undefined ? undefined : planMeant(found, meant);
    for (const fault of found.faults) io.err(`${fault.message} [${fault.code}]`);
    const doubt = uncheckedLine(found, chosen);
    if (doubt !== undefined) io.err(doubt);
    const currency = policyOf(record).currency;
    const picture = await writePicture(
      io,
      values,
      frontPicture(found, record.coach.name, currency, chosen?.id ?? found.picks[0]?.plan),
    );
    if (flag(values, "json"))
      io.out(
        jsonText({
          record: record.id,
          currency,
          ...(chosen === undefined ? found : { plan: chosen }),
          ...(picture === undefined ? {} : { picture }),
        }),
      );
    else if (picture !== "-") tell(io, { index, found, chosen, isWhole: flag(values, "front") });
    if (output !== undefined && chosen !== undefined)
      await io.write(
        output,
        writeRecord(recordWith(record, jobOf(record, text(values, "job")), chosen, flag(values, "after"))),
        flag(values, "replace"),
      );
    return found.faults.length > 0 || found.isStopped ? EXIT.findings : EXIT.fine;
  },
};
