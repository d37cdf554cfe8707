import { jsonText } from "./columns.js";
import { EXIT, flag, type Options, text, type Values } from "./command.js";
import type { Io } from "./io.js";
import { Misuse } from "./misuse.js";

/** Options of every command that writes a paper. */
export const PAPER_OPTIONS: Options = {
  output: { type: "string", short: "o" },
  date: { type: "string" },
  replace: { type: "boolean" },
};

export const PAPER_OPTION_HELP: Readonly<Record<string, string>> = {
  output: "the PDF to write",
  date: "the date on the papers; today where absent",
  replace: "write over a file that is there",
};

/** Where the paper goes, or a misuse. */
export function outputOf(values: Values): string {
  const output = text(values, "output");
  if (output === undefined) throw new Misuse("say where the paper goes: -o FILE.pdf");
  return output;
}

/** The date given on the line, or today. */
export function dateOf(values: Values, today: string): string {
  const given = text(values, "date");
  if (given === undefined) return today;
  if (!/^\d{4}-\d{2}-\d{2}$/.test(given)) throw new Misuse(`--date ${given}: wanted a date like 2026-05-02`);
  return given;
}

/** Writes the paper and says so, as a line or as data. */
export async function writePaper(io: Io, values: Values, pdf: Uint8Array, about: object): Promise<number> {
  const output = outputOf(values);
  await io.write(output, pdf, flag(values, "replace"));
  if (output !== "-")
    io.out(flag(values, "json") ? jsonText({ ...about, output, bytes: pdf.length }) : `Written: ${output}`);
  return EXIT.fine;
}
