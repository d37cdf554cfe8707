import { parseArgs } from "node:util";
import { COMMON_OPTIONS, type Command, EXIT } from "./command.js";
import type { Entry } from "./commands.js";
import { commandHelp, overview } from "./help.js";
import type { Io } from "./io.js";
import { Misuse } from "./misuse.js";

/** Words one or two letters apart count as meant. */
const near = (a: string, b: string): boolean => {
  if (b.startsWith(a) || a.startsWith(b)) return true;
  let same = 0;
  for (let i = 0; i < Math.min(a.length, b.length); i++) if (a[i] === b[i]) same += 1;
  return same >= Math.max(a.length, b.length) - 2;
};

const withCommon = (command: Command): Command => ({ ...command, options: { ...COMMON_OPTIONS, ...command.options } });

/** What went wrong in one line: the parser's own message takes three to say that a value begins with a dash. */
function wordsOf(error: Error): string {
  const option = /^Option '(?:-\w, )?(--[\w-]+).*' argument is ambiguous/.exec(error.message)?.[1];
  return option === undefined
    ? error.message
    : `${option}: its value is missing, or begins with a dash; a value that does is written ${option}=-5`;
}

/** Runs one command line (without `fusebook` itself) and gives its exit code; never throws for what the user did. */
export async function runLine(words: readonly string[], commands: readonly Entry[], io: Io): Promise<number> {
  const [name, ...rest] = words;
  if (name === undefined || name === "--help" || name === "-h" || name === "help") {
    const asked = commands.find((command) => command.name === rest[0]);
    io.out(asked ? commandHelp(withCommon(await asked.load())) : overview(commands));
    return name === undefined ? EXIT.misuse : EXIT.fine;
  }
  const found = commands.find((command) => command.name === name);
  if (found === undefined) {
    const meant = commands.filter((command) => near(name, command.name)).map((command) => command.name);
    io.err(
      `fusebook: there is no command "${name}"${meant.length > 0 ? `; did you mean ${meant.join(" or ")}` : ""}. fusebook --help lists them.`,
    );
    return EXIT.misuse;
  }
  const command = withCommon(await found.load());
  try {
    const parsed = parseArgs({ args: rest, options: command.options, allowPositionals: true, strict: true });
    if (parsed.values.help === true) {
      io.out(commandHelp(command));
      return EXIT.fine;
    }
    const units = parsed.values.units;
    if (units !== undefined && units !== "us" && units !== "metric" && units !== "both")
      throw new Misuse(`--units ${String(units)}: wanted us, metric or both`);
    const count = parsed.positionals.length;
    if (count < (command.minPositionals ?? 0))
      throw new Misuse(`something is missing: fusebook ${command.name} ${command.usage}`);
    if (count > (command.maxPositionals ?? Number.POSITIVE_INFINITY))
      throw new Misuse(
        `too many words (${parsed.positionals.slice(command.maxPositionals).join(" ")}): fusebook ${command.name} ${command.usage}`,
      );
    return await command.run({ values: parsed.values as never, positionals: parsed.positionals, io });
  } catch (error) {
    const isOurs =
      error instanceof Misuse || String((error as { code?: unknown }).code ?? "").startsWith("ERR_PARSE_ARGS");
    if (!isOurs) throw error;
    io.err(`fusebook ${command.name}: ${wordsOf(error as Error)}`);
    io.err(`fusebook ${command.name} --help shows how, by example.`);
    return EXIT.misuse;
  }
}
