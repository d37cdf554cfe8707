import {
  checkRecord,
  type Finding,
  findingWords,
  SEVERITIES,
  type Severity,
  sourceWords,
} from "@fusebook/core/findings";
import { indexRecord } from "@fusebook/core/record";
import { jsonText, wrap } from "../columns.js";
import { type Command, EXIT, flag, text } from "../command.js";
import type { Io } from "../io.js";
import { Misuse } from "../misuse.js";
import { loadRecord, type Units, unitsOf } from "../records.js";

const gravity = (severity: Severity): number => SEVERITIES.indexOf(severity);

/** A finding with its words, as `--json` gives it. */
export const worded = (finding: Finding, units: Units) => ({ ...finding, words: findingWords(finding, units) });

/** How many of each severity, open ones counted apart. */
export function countsOf(findings: readonly Finding[]): Record<Severity | "open", number> {
  const counts = { stop: 0, mend: 0, watch: 0, note: 0, open: 0 };
  for (const finding of findings) {
    if (finding.verdict === "open") counts.open += 1;
    else if (finding.verdict === "fails") counts[finding.severity] += 1;
  }
  return counts;
}

function show(io: Io, finding: Finding, units: Units): void {
  const words = findingWords(finding, units);
  const lines = (body: string): string =>
    wrap(body, Math.min(io.columns, 110) - 4)
      .map((line) => `    ${line}`)
      .join("\n");
  io.out(
    `${(finding.verdict === "open" ? `open, ${finding.severity} if so` : finding.severity).toUpperCase()}  ${words.title}`,
  );
  io.out(lines(words.statement));
  if (words.remedy) io.out(lines(`Do: ${words.remedy}`));
  io.out(lines(`Limit from: ${sourceWords(finding.source)}`));
  io.out("");
}

/** What is unsafe, wrong, marginal or unknown. */
export const check: Command = {
  name: "check",
  usage: "RECORD",
  about:
    "Checks a record by every rule and lists what fails and what is open, worst first, each with its evidence, its limit and where the limit comes from.",
  examples: [
    ["fusebook check coach.fusebook.json", "everything that fails or is open"],
    [
      "fusebook check coach.fusebook.json --severity stop",
      "only what must not be energised; exit code 1 if there is any",
    ],
    ["fusebook check coach.fusebook.json --json --holds", "every verdict as data, also what holds"],
    ["cat coach.fusebook.json | fusebook check -", "from a pipe"],
  ],
  options: { severity: { type: "string" }, holds: { type: "boolean" }, subject: { type: "string" } },
  optionHelp: {
    severity:
      "stop, mend, watch or note: show from here up; exit 1 when something fails at or above it (mend where absent, and all are shown)",
    holds: "also what holds",
    subject: "only the findings about this id",
  },
  minPositionals: 1,
  maxPositionals: 1,
  async run({ values, positionals, io }) {
    const asked = text(values, "severity");
    if (asked !== undefined && !(SEVERITIES as readonly string[]).includes(asked))
      throw new Misuse(`--severity ${asked}: wanted ${SEVERITIES.join(", ")}`);
    const record = await loadRecord(io, positionals[0] as string);
    const units = unitsOf(values, record);
    const only = text(values, "subject");
    const all = checkRecord(indexRecord(record), { includeHolds: flag(values, "holds") }).filter(
      (finding) => only === undefined || finding.subject.id === only,
    );
    const shown =
      asked === undefined ? all : all.filter((finding) => gravity(finding.severity) <= gravity(asked as Severity));
    const bar = gravity((asked as Severity | undefined) ?? "mend");
    const isBad = shown.some((finding) => finding.verdict === "fails" && gravity(finding.severity) <= bar);
    const counts = countsOf(all);
    if (flag(values, "json"))
      io.out(
        jsonText({
          record: record.id,
          coach: record.coach.name,
          counts,
          findings: shown.map((finding) => worded(finding, units)),
        }),
      );
    else {
      for (const finding of shown) show(io, finding, units);
      io.out(
        `${record.coach.name}${record.coach.isInvented ? " (invented)" : ""}: ${counts.stop} stop, ${counts.mend} to mend, ${counts.watch} to watch, ${counts.note} to note, ${counts.open} open.`,
      );
    }
    return isBad ? EXIT.findings : EXIT.fine;
  },
};
