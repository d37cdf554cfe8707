import { indexRecord } from "@fusebook/core/record";
import { type Command, text } from "../command.js";
import { Misuse } from "../misuse.js";
import { dateOf, outputOf, PAPER_OPTION_HELP, PAPER_OPTIONS, writePaper } from "../paper-output.js";
import { packetFor } from "../papers.js";
import { askedJob } from "../plan-asked.js";
import { ASKED_HELP, ASKED_OPTIONS } from "../plan-options.js";
import { jobOf, planMeant } from "../plan-pick.js";
import { searchPlans } from "../plan-search.js";
import { uncheckedLine } from "../plan-text.js";
import { loadRecord, unitsOf } from "../records.js";

/** The papers for the job. */
export const packet: Command = {
  name: "packet",
  usage: "RECORD --pick PLAN -o OUT.pdf",
  about:
    "Prints the job sheet, the estimate, the isolation of this coach, the steps with their cautions, pin map, switch cards, fuse labels at true size and the test sheet for one plan of the front.",
  examples: [
    ["fusebook packet coach.fusebook.json --pick most-light -o packet.pdf", "for a named pick"],
    [
      "fusebook packet coach.fusebook.json --pick p-5d9edefbd265 --units metric -o packet.pdf",
      "for any plan of the front, in metric units",
    ],
  ],
  options: { ...PAPER_OPTIONS, pick: { type: "string" }, ...ASKED_OPTIONS },
  optionHelp: {
    pick: "a named pick or the id of a plan; the first pick where absent",
    ...ASKED_HELP,
    ...PAPER_OPTION_HELP,
  },
  minPositionals: 1,
  maxPositionals: 1,
  async run({ values, positionals, io }) {
    const record = await loadRecord(io, positionals[0] as string);
    outputOf(values);
    const before = indexRecord(record);
    const job = jobOf(record, text(values, "job"));
    const front = await searchPlans(before, askedJob(before, job, values), io);
    const meant = text(values, "pick") ?? front.picks[0]?.name;
    if (meant === undefined) throw new Misuse("no plan can be offered for this record; fusebook plan says why");
    const plan = planMeant(front, meant);
    const doubt = uncheckedLine(front, plan);
    if (doubt !== undefined) io.err(doubt);
    const made = await packetFor({
      before,
      plan,
      job,
      date: dateOf(values, io.today),
      units: unitsOf(values, record),
    });
    for (const line of made.unfit) io.err(line);
    return writePaper(io, values, made.pdf, { record: record.id, plan: plan.id, labelsThatDoNotFit: made.unfit });
  },
};
