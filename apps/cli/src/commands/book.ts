import { checkRecord } from "@fusebook/core/findings";
import { judge, testsOf } from "@fusebook/core/proof";
import { indexRecord } from "@fusebook/core/record";
import { type Command, text } from "../command.js";
import { dateOf, outputOf, PAPER_OPTION_HELP, PAPER_OPTIONS, writePaper } from "../paper-output.js";
import { bookFor } from "../papers.js";
import { loadJson, loadRecord, unitsOf } from "../records.js";
import { readingsOf } from "./prove.js";

/** The as-built book. */
export const book: Command = {
  name: "book",
  usage: "RECORD [--readings FILE] -o OUT.pdf",
  about:
    "Prints the book that stays with the coach: every fuse and what it feeds, every module and how its switches stand, every wire, what is still open, what was proved, and where each limit comes from. The record itself is attached inside the PDF.",
  examples: [
    ["fusebook book after.fusebook.json -o book.pdf", "as the record stands"],
    ["fusebook book after.fusebook.json --readings readings.json -o book.pdf", "with the proof of these readings"],
  ],
  options: { ...PAPER_OPTIONS, readings: { type: "string" } },
  optionHelp: { readings: "readings to prove it with; the record's own where absent", ...PAPER_OPTION_HELP },
  minPositionals: 1,
  maxPositionals: 1,
  async run({ values, positionals, io }) {
    const record = await loadRecord(io, positionals[0] as string);
    outputOf(values);
    const index = indexRecord(record);
    const from = text(values, "readings");
    const readings = from === undefined ? (record.readings ?? []) : readingsOf(await loadJson(io, from), record, from);
    const pdf = await bookFor({
      record,
      findings: checkRecord(index),
      ...(readings.length === 0 ? {} : { proof: judge(testsOf(index), readings, index) }),
      date: dateOf(values, io.today),
      units: unitsOf(values, record),
    });
    return writePaper(io, values, pdf, { record: record.id });
  },
};
