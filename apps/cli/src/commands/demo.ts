import { mkdir } from "node:fs/promises";
import { join } from "node:path";
import { demoFiles } from "@fusebook/fixtures";
import { type Command, EXIT, flag, text } from "../command.js";

/** Writes the invented demo coach, to try everything on. */
export const demo: Command = {
  name: "demo",
  usage: "[-o FOLDER]",
  about:
    "Writes the files of Marsh Wren, an invented coach: its messy survey as CSV and XLSX, the base record, the whole record, and readings taken after the work.",
  examples: [
    ["fusebook demo -o marsh-wren", "into a folder of its own"],
    [
      "fusebook demo -o marsh-wren && fusebook import marsh-wren/marsh-wren-survey.csv --into marsh-wren/marsh-wren-base.fusebook.json -o mine.fusebook.json",
      "and read its survey",
    ],
  ],
  options: { output: { type: "string", short: "o" }, replace: { type: "boolean" } },
  optionHelp: { output: "the folder; the current one where absent", replace: "write over files that are there" },
  maxPositionals: 0,
  async run({ values, io }) {
    const folder = text(values, "output") ?? ".";
    await mkdir(folder, { recursive: true });
    for (const file of demoFiles()) {
      const path = join(folder, file.name);
      await io.write(path, file.content, flag(values, "replace"));
      io.out(path);
    }
    return EXIT.fine;
  },
};
