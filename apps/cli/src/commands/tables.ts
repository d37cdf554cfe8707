import { allTables, tableById } from "@fusebook/core/tables";
import { columns, jsonText } from "../columns.js";
import { type Command, EXIT, flag } from "../command.js";
import { Misuse } from "../misuse.js";

const clause = (source: { edition?: string; clause?: string }): string =>
  [source.edition, source.clause].filter((part) => part !== undefined && part !== "-").join(", ");

/** Published figures, each with where it comes from and how it was seen. */
export const tables: Command = {
  name: "tables",
  usage: "[TABLE]",
  about:
    "Lists the published tables, or one of them whole, each with its source, edition, clause and whether it was seen, computed or comes from memory.",
  examples: [
    ["fusebook tables", "all of them, a line each"],
    ["fusebook tables cfr183-t5", "allowable amperage of conductors, by size and insulation"],
    ["fusebook tables blade-times --json", "one table as data"],
  ],
  options: {},
  optionHelp: {},
  maxPositionals: 1,
  async run({ values, positionals, io }) {
    const [id] = positionals;
    if (id === undefined) {
      if (flag(values, "json"))
        io.out(jsonText(allTables().map(({ id, title, source, rows }) => ({ id, title, source, rows: rows.length }))));
      else
        io.out(
          columns(
            [
              ["table", "how", "what and where from"],
              ...allTables().map((table) => [
                table.id,
                table.source.how,
                `${table.title} (${[table.source.name, clause(table.source)].filter(Boolean).join(", ")})`,
              ]),
            ],
            io.columns,
          ),
        );
      return EXIT.fine;
    }
    const table = tableById(id);
    if (table === undefined) throw new Misuse(`there is no table "${id}"; fusebook tables lists them`);
    if (flag(values, "json")) {
      io.out(jsonText(table));
      return EXIT.fine;
    }
    const { source } = table;
    io.out(
      `${table.title}\n${[source.name, clause(source)].filter(Boolean).join(", ")}: ${source.how === "memory" ? "FROM MEMORY" : source.how}. ${source.where}\n`,
    );
    io.out(
      columns(
        [table.columns, ...table.rows.map((row) => row.map((cell) => (cell === null ? "" : String(cell))))],
        io.columns,
      ),
    );
    if (table.notes.length > 0) io.out(`\n${table.notes.map((note) => `- ${note}`).join("\n")}`);
    return EXIT.fine;
  },
};
