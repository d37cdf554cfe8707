import { judge, proofWords, testsOf } from "@fusebook/core/proof";
import { type CoachRecord, indexRecord, type Reading, readRecord } from "@fusebook/core/record";
import { jsonText, wrap } from "../columns.js";
import { type Command, EXIT, flag, text } from "../command.js";
import { Misuse } from "../misuse.js";
import { loadJson, loadRecord, unitsOf } from "../records.js";

/** Readings from a file: a list, or an object with `readings`. Checked by the record's own schema, every fault by path. */
export function readingsOf(document: unknown, record: CoachRecord, from: string): Reading[] {
  const list = Array.isArray(document) ? document : (document as { readings?: unknown } | null)?.readings;
  if (!Array.isArray(list))
    throw new Misuse(`${from}: wanted a list of readings, or an object with a list named readings`);
  const read = readRecord({ format: "fusebook/1", id: record.id, coach: { name: record.coach.name }, readings: list });
  if (read.kind === "refused")
    throw new Misuse(
      `${from}: these readings cannot be used:\n${read.faults.map((fault) => `  ${fault.path}: ${fault.message}`).join("\n")}`,
    );
  return read.record.readings ?? [];
}

/** Predicted against read, channel by channel. */
export const prove: Command = {
  name: "prove",
  usage: "RECORD [--readings FILE]",
  about:
    "Makes the test matrix of the record as it stands after the work, and judges readings against it with the meter's accuracy. What was not read stays unproved. Signing is refused while a stop is open.",
  examples: [
    ["fusebook prove after.fusebook.json", "the tests, each with its expected value and span"],
    [
      "fusebook prove after.fusebook.json --readings readings.json",
      "the verdict on each; exit code 1 if any fails or signing is refused",
    ],
    ["fusebook prove after.fusebook.json --readings - --json < readings.json", "from a pipe, as data"],
  ],
  options: { readings: { type: "string" } },
  optionHelp: { readings: "a JSON list of readings, each with the test's id; the record's own where absent" },
  minPositionals: 1,
  maxPositionals: 1,
  async run({ values, positionals, io }) {
    const record = await loadRecord(io, positionals[0] as string);
    const index = indexRecord(record);
    const units = unitsOf(values, record);
    const tests = testsOf(index);
    const from = text(values, "readings");
    const readings = from === undefined ? (record.readings ?? []) : readingsOf(await loadJson(io, from), record, from);
    const report = judge(tests, readings, index);
    if (flag(values, "json")) io.out(jsonText({ record: record.id, ...report }));
    else {
      const width = Math.min(io.columns, 110) - 4;
      const lines = (body: string): string =>
        wrap(body, width)
          .map((line) => `    ${line}`)
          .join("\n");
      for (const each of report.judged)
        io.out(
          `${each.verdict.toUpperCase()}  ${each.test.id}\n${lines(each.test.asks)}\n${lines(proofWords(each, units))}\n`,
        );
      for (const stray of report.strays) io.out(`reading ${stray.reading}: ${stray.why}`);
      const count = (verdict: string): number => report.judged.filter((each) => each.verdict === verdict).length;
      io.out(
        `${count("holds")} proved, ${count("fails")} failed, ${count("open")} open, ${report.unproved.length} unproved.`,
      );
      io.out(
        report.maySign ? "The job may be signed." : `The job may not be signed: ${report.signingStoppedBy.join("; ")}.`,
      );
    }
    const hasFailed = report.judged.some((each) => each.verdict === "fails");
    return hasFailed || (readings.length > 0 && !report.maySign) ? EXIT.findings : EXIT.fine;
  },
};
