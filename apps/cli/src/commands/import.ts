import {
  type CoachRecord,
  type ColumnMapping,
  importSurvey,
  isSurveyField,
  newRecord,
  overrideMapping,
  proposeMapping,
  SURVEY_FIELDS,
  type SurveyField,
  writeRecord,
} from "@fusebook/core/record";
import { readGrid } from "@fusebook/intake";
import { columns, jsonText } from "../columns.js";
import { type Command, EXIT, flag, text, type Values } from "../command.js";
import { Misuse } from "../misuse.js";
import { loadRecord } from "../records.js";

const idFrom = (name: string): string =>
  name
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-|-$/g, "")
    .slice(0, 40) || "coach";

/** `--map "Ckt=circuit"`: the user's word over the proposal. */
function withWishes(proposed: readonly ColumnMapping[], values: Values): readonly ColumnMapping[] {
  const wishes = values.map;
  if (!Array.isArray(wishes)) return proposed;
  const fields: Record<string, SurveyField> = {};
  for (const each of wishes) {
    const wish = String(each);
    const at = wish.lastIndexOf("=");
    const heading = wish.slice(0, at).trim();
    const field = wish.slice(at + 1).trim();
    if (at < 1 || !proposed.some((column) => column.heading === heading))
      throw new Misuse(
        `--map "${wish}": wanted "HEADING=FIELD" with a heading of the survey: ${proposed.map((column) => column.heading).join(" | ")}`,
      );
    if (!isSurveyField(field))
      throw new Misuse(`--map "${wish}": there is no field ${field}; fields are ${SURVEY_FIELDS.join(", ")}`);
    fields[heading] = field;
  }
  return overrideMapping(proposed, fields);
}

/** A survey as people type it becomes the record. */
export const importCommand: Command = {
  name: "import",
  usage: "SURVEY [--into RECORD] -o OUT",
  about:
    "Reads a table with one row a circuit, columns in any order and named as people name them. Says how it took each column, what it could not read and where; nothing is dropped. The survey file and the record read from are never changed.",
  examples: [
    ["fusebook import survey.csv --show-mapping", "how each column would be taken, and how sure that is"],
    [
      "fusebook import survey.xlsx --into coach.fusebook.json -o coach-2.fusebook.json",
      "add or update the circuits of a record",
    ],
    [
      'fusebook import survey.csv --map "What it feeds=loads" -o coach.fusebook.json',
      "your word over the proposal; remembered in the record",
    ],
    ["fusebook import - --name Heron -o heron.fusebook.json < pasted.txt", "rows pasted from a spreadsheet"],
  ],
  options: {
    into: { type: "string" },
    output: { type: "string", short: "o" },
    name: { type: "string" },
    map: { type: "string", multiple: true },
    "show-mapping": { type: "boolean" },
    replace: { type: "boolean" },
  },
  optionHelp: {
    into: "the record to add to; a new one where absent",
    output: "where to write the record; - is the screen",
    name: "the coach's name, for a new record",
    map: "HEADING=FIELD, as often as wanted",
    "show-mapping": "show how the columns would be taken, and write nothing",
    replace: "write over a file that is there",
  },
  minPositionals: 1,
  maxPositionals: 1,
  async run({ values, positionals, io }) {
    const path = positionals[0] as string;
    const into = text(values, "into");
    const output = text(values, "output");
    if (output !== undefined && output !== "-" && output === path)
      throw new Misuse(`${output}: the survey is never written over; choose another name for the record`);
    const read = await readGrid(await io.read(path), path === "-" ? "pasted text" : path);
    if (read.kind === "refused")
      throw new Misuse(
        `${path} cannot be read as a survey:\n${read.faults.map((fault) => `  ${fault.place}: ${fault.message} [${fault.code}]`).join("\n")}`,
      );
    const name = text(values, "name") ?? "Unnamed coach";
    const base: CoachRecord = into === undefined ? newRecord({ id: idFrom(name), name }) : await loadRecord(io, into);
    const mapping = withWishes(proposeMapping(read.grid, base.survey?.mappings), values);
    if (flag(values, "show-mapping")) {
      const rows = mapping.map((column) => [
        column.heading,
        column.field,
        `${Math.round(column.confidence * 100)} %`,
        column.why,
      ]);
      io.out(
        flag(values, "json")
          ? jsonText(mapping)
          : columns([["heading", "taken as", "sure", "why"], ...rows], io.columns),
      );
      return EXIT.fine;
    }
    if (output === undefined) throw new Misuse("say where the record goes: -o FILE, or -o - for the screen");
    const { record, report } = importSurvey(base, read.grid, mapping, {});
    await io.write(output, writeRecord(record), flag(values, "replace"));
    const say = output === "-" ? io.err : io.out;
    if (flag(values, "json")) {
      say(jsonText({ record: record.id, output, mapping, report, warnings: read.grid.warnings }));
      return EXIT.fine;
    }
    for (const warning of read.grid.warnings) say(`${warning.place}: ${warning.message}`);
    for (const told of report.told) say(`${told.place}: ${told.message}`);
    const unread = report.unread.filter((cell) => cell.code !== "blank");
    if (unread.length > 0) {
      say(`\n${unread.length} cells are kept as text, not as figures:`);
      say(
        columns(
          unread.map((cell) => [cell.place, cell.column, `"${cell.text}": ${cell.why}`]),
          io.columns,
        ),
      );
    }
    if (report.proposedClasses.length > 0)
      say(
        `\n${report.proposedClasses.length} load classes were guessed from the name; look at them: ${report.proposedClasses.map((each) => `${each.name} (${each.class})`).join(", ")}`,
      );
    say(
      `\n${report.rows} rows, ${report.circuits} circuits, ${report.changes.length} changes.${output === "-" ? "" : ` Written: ${output}`}`,
    );
    return EXIT.fine;
  },
};
