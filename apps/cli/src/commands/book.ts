import { checkRecord } from "@fusebook/core/findings";
import { judge, testsOf } from "@fusebook/core/proof";
import { indexRecord } from "@fusebook/core/record";
import { jsonText } from "../columns.js";
import { type Command, EXIT, flag, text } from "../command.js";
import { Misuse } from "../misuse.js";
import { bookFor } from "../papers.js";
import { loadJson, loadRecord, unitsOf } from "../records.js";
import { dateOf } from "./packet.js";
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
  options: {
    readings: { type: "string" },
    output: { type: "string", short: "o" },
    date: { type: "string" },
    replace: { type: "boolean" },
  },
  optionHelp: {
    readings: "readings to prove it with; the record's own where absent",
    output: "the PDF to write",
    date: "the date on the papers; today where absent",
    replace: "write over a file that is there",
  },
  minPositionals: 1,
  maxPositionals: 1,
  async run({ values, positionals, io }) {
    const record = await loadRecord(io, positionals[0] as string);
    const output = text(values, "output");
    if (output === undefined) throw new Misuse("say where the book goes: -o FILE.pdf");
    const index = indexRecord(record);
    const from = text(values, "readings");
    const readings = from === undefined ? (record.readings ?? []) : readingsOf(await loadJson(io, from), record, from);
    const pdf = await bookFor({
      record,
      findings: checkRecord(index),
      ...(readings.length === 0 ? {} : { proof: judge(testsOf(index), readings, index) }),
      date: dateOf(text(values, "date"), io.today),
      units: unitsOf(values, record),
    });
    await io.write(output, pdf, flag(values, "replace"));
    if (output !== "-")
      io.out(flag(values, "json") ? jsonText({ record: record.id, output, bytes: pdf.length }) : `Written: ${output}`);
    return EXIT.fine;
  },
};
