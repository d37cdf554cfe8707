import { wrap } from "./columns.js";
import type { Command } from "./command.js";
import { type Entry, PARTS, type Part } from "./commands.js";

const COMMON_HELP: Readonly<Record<string, string>> = {
  help: "this page",
  seed: "which run of chance, a whole number; 1 where absent. The same seed gives the same answer everywhere",
  samples: "how many coaches are drawn from the stated tolerances",
  json: "the same answer as JSON with stable keys (docs/commands.md)",
  units: "us, metric or both; the record's own choice where absent",
};

const EXIT_CODES =
  "Exit code: 0 fine; 1 something fails, at or above the severity asked, or the record cannot answer (docs/commands.md says when for each command); 2 the line was not understood or a file not read.";

const WIDTH = 100;
const OPTION_COLUMN = 26;

const wrapped = (text: string, indent: string): string[] =>
  wrap(text, WIDTH - indent.length).map((line) => `${indent}${line}`);

const optionLine = (name: string, help: string, command: Command): string => {
  const option = command.options[name];
  const short = option?.short ? `-${option.short}, ` : "    ";
  const head = `  ${short}--${name}${option?.type === "string" ? " …" : ""}`.padEnd(OPTION_COLUMN);
  return head + wrapped(help, " ".repeat(OPTION_COLUMN)).join("\n").trimStart();
};

/** The help page of one command. */
export function commandHelp(command: Command): string {
  const options = Object.entries({ ...command.optionHelp, ...COMMON_HELP, ...command.optionHelp }).filter(
    ([name]) => name in command.options,
  );
  return [
    `fusebook ${command.name} ${command.usage}`.trim(),
    "",
    ...wrapped(command.about, ""),
    "",
    "Examples",
    ...command.examples.flatMap(([line, what]) => [`  ${line}`, ...wrapped(what, "      ")]),
    "",
    "Options",
    ...options.map(([name, help]) => optionLine(name, help, command)),
    "",
    ...wrapped(EXIT_CODES, ""),
  ].join("\n");
}

/** The page shown for `fusebook --help`. */
export function overview(commands: readonly Pick<Entry, "name" | "part" | "summary">[]): string {
  return [
    "fusebook: one record of the coach that computes",
    "",
    ...(Object.keys(PARTS) as Part[]).flatMap((part) => [
      PARTS[part],
      ...commands
        .filter((command) => command.part === part)
        .map((command) => `  ${command.name.padEnd(10)}${command.summary}`),
      "",
    ]),
    "Try",
    "  fusebook demo -o marsh-wren        an invented coach to try everything on",
    "  fusebook check marsh-wren/marsh-wren.fusebook.json",
    "",
    "fusebook COMMAND --help teaches each by example. A file named - is standard input or output.",
    "Nothing here replaces local codes or licensed work; mains, gas and life-safety detectors are out of reach of any plan.",
  ].join("\n");
}
