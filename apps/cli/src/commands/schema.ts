import { jsonSchemaOf } from "@fusebook/core/record";
import { jsonText } from "../columns.js";
import { type Command, EXIT, flag, text } from "../command.js";

/** The published JSON Schema of a record. */
export const schema: Command = {
  name: "schema",
  usage: "[-o FILE]",
  about:
    "Prints the JSON Schema (draft 2020-12) of the record format fusebook/1, made from the very definition the program checks with.",
  examples: [
    ["fusebook schema", "to the screen"],
    [
      "fusebook schema -o fusebook-1.schema.json",
      "to a file, for an editor that helps while you type a record by hand",
    ],
  ],
  options: { output: { type: "string", short: "o" }, replace: { type: "boolean" } },
  optionHelp: { output: "where to write it; the screen where absent", replace: "write over a file that is there" },
  maxPositionals: 0,
  async run({ values, io }) {
    await io.write(text(values, "output") ?? "-", `${jsonText(jsonSchemaOf())}\n`, flag(values, "replace"));
    return EXIT.fine;
  },
};
