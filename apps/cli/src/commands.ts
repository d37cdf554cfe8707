import type { Command } from "./command.js";

/** A command by name; the rest of it, and the engines it needs, are loaded when it is asked for. */
export interface Entry {
  readonly name: string;
  readonly summary: string;
  load(): Promise<Command>;
}

const entry = (name: string, summary: string, load: () => Promise<Command>): Entry => ({ name, summary, load });

/** Every command, in the order of the job. */
export const COMMANDS: readonly Entry[] = [
  entry(
    "import",
    "read a survey (CSV, XLSX, pasted text) into a record",
    async () => (await import("./commands/import.js")).importCommand,
  ),
  entry(
    "check",
    "what is unsafe, wrong, marginal or unknown, and what would settle it",
    async () => (await import("./commands/check.js")).check,
  ),
  entry(
    "doubt",
    "how likely each open verdict fails, and what to read next",
    async () => (await import("./commands/doubt.js")).doubt,
  ),
  entry(
    "solve",
    "volts, amps and drops of the whole coach in one state",
    async () => (await import("./commands/solve.js")).solve,
  ),
  entry(
    "fuse",
    "one circuit's fuse against start, short, wires and the fuses before it",
    async () => (await import("./commands/fuse.js")).fuse,
  ),
  entry(
    "plan",
    "which modules to replace, every switch, every fuse, and why not more",
    async () => (await import("./commands/plan.js")).plan,
  ),
  entry(
    "hours",
    "how long the batteries last, before and after a plan, and what drains them",
    async () => (await import("./commands/hours.js")).hours,
  ),
  entry("packet", "the papers for the job, as one PDF", async () => (await import("./commands/packet.js")).packet),
  entry(
    "prove",
    "predicted against read, channel by channel; says what may be signed",
    async () => (await import("./commands/prove.js")).prove,
  ),
  entry(
    "book",
    "the as-built book, with the fuse map and the record inside",
    async () => (await import("./commands/book.js")).book,
  ),
  entry(
    "bank",
    "bank switches: set them, read them, work out their rule",
    async () => (await import("./commands/bank.js")).bank,
  ),
  entry(
    "dim",
    "what may be dimmed and why, flicker, lowest duty, ramps that look even",
    async () => (await import("./commands/dim.js")).dim,
  ),
  entry(
    "tables",
    "the published figures every limit comes from",
    async () => (await import("./commands/tables.js")).tables,
  ),
  entry("schema", "the JSON Schema of a record", async () => (await import("./commands/schema.js")).schema),
  entry(
    "demo",
    "write the invented demo coach, to try everything on",
    async () => (await import("./commands/demo.js")).demo,
  ),
];
