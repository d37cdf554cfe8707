import { frontOf } from "@fusebook/core/plan";
import { indexRecord } from "@fusebook/core/record";
import { jsonText } from "../columns.js";
import { type Command, EXIT, flag, text } from "../command.js";
import { Misuse } from "../misuse.js";
import { packetFor } from "../papers.js";
import { loadRecord, unitsOf } from "../records.js";
import { jobOf, planMeant } from "./plan.js";

/** A date given on the line, or today. */
export function dateOf(given: string | undefined, today: string): string {
  if (given === undefined) return today;
  if (!/^\d{4}-\d{2}-\d{2}$/.test(given)) throw new Misuse(`--date ${given}: wanted a date like 2026-05-02`);
  return given;
}

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
  options: {
    job: { type: "string" },
    pick: { type: "string" },
    output: { type: "string", short: "o" },
    date: { type: "string" },
    replace: { type: "boolean" },
  },
  optionHelp: {
    job: "the job; the first where absent",
    pick: "a named pick or the id of a plan; the first pick where absent",
    output: "the PDF to write",
    date: "the date on the papers; today where absent",
    replace: "write over a file that is there",
  },
  minPositionals: 1,
  maxPositionals: 1,
  async run({ values, positionals, io }) {
    const record = await loadRecord(io, positionals[0] as string);
    const output = text(values, "output");
    if (output === undefined) throw new Misuse("say where the packet goes: -o FILE.pdf");
    const before = indexRecord(record);
    const job = jobOf(record, text(values, "job"));
    const front = frontOf(before, job);
    const meant = text(values, "pick") ?? front.picks[0]?.name;
    if (meant === undefined) throw new Misuse("no plan can be offered for this record; fusebook plan says why");
    const plan = planMeant(front, meant);
    const made = await packetFor({
      before,
      plan,
      job,
      date: dateOf(text(values, "date"), io.today),
      units: unitsOf(values, record),
    });
    await io.write(output, made.pdf, flag(values, "replace"));
    for (const line of made.unfit) io.err(line);
    if (output !== "-")
      io.out(
        flag(values, "json")
          ? jsonText({
              record: record.id,
              plan: plan.id,
              output,
              bytes: made.pdf.length,
              labelsThatDoNotFit: made.unfit,
            })
          : `Written: ${output}`,
      );
    return EXIT.fine;
  },
};
