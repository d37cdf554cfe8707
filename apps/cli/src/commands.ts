import type { Command } from "./command.js";

/** Where a command stands on the first page of help. */
export const PARTS = {
  job: "The job, in order",
  ask: "Ask one thing, at any time",
  look: "Look up and try",
} as const;
export type Part = keyof typeof PARTS;

/** A command by name; the rest of it, and the engines it needs, are loaded when it is asked for. */
export interface Entry {
  readonly name: string;
  readonly part: Part;
  readonly summary: string;
  load(): Promise<Command>;
}

const entry = (part: Part, name: string, summary: string, load: () => Promise<Command>): Entry => ({
  name,
  part,
  summary,
  load,
});

/** Every command, by part of the first page. */
export const COMMANDS: readonly Entry[] = [
  entry(
    "job",
    "import",
    "read a survey (CSV, XLSX, pasted text) into a record",
    async () => (await import("./commands/import.js")).importCommand,
  ),
  entry(
    "job",
    "check",
    "what is unsafe, wrong, marginal or unknown, and what would settle it",
    async () => (await import("./commands/check.js")).check,
  ),
  entry(
    "job",
    "plan",
    "which modules to replace, every switch, every fuse, and why not more",
    async () => (await import("./commands/plan.js")).plan,
  ),
  entry(
    "job",
    "packet",
    "the papers for the job, as one PDF",
    async () => (await import("./commands/packet.js")).packet,
  ),
  entry(
    "job",
    "prove",
    "predicted against read, channel by channel; says what may be signed",
    async () => (await import("./commands/prove.js")).prove,
  ),
  entry(
    "job",
    "book",
    "the as-built book, with the fuse map and the record inside",
    async () => (await import("./commands/book.js")).book,
  ),
  entry(
    "ask",
    "solve",
    "volts, amps and drops of the whole coach in one state",
    async () => (await import("./commands/solve.js")).solve,
  ),
  entry(
    "ask",
    "doubt",
    "how likely each open verdict fails, and what to read next",
    async () => (await import("./commands/doubt.js")).doubt,
  ),
  entry(
    "ask",
    "fuse",
    "one circuit's fuse against start, short, wires and the fuses before it",
    async () => (await import("./commands/fuse.js")).fuse,
  ),
  entry(
    "ask",
    "dim",
    "what may be dimmed and why, flicker, lowest duty, ramps that look even",
    async () => (await import("./commands/dim.js")).dim,
  ),
  entry(
    "ask",
    "hours",
    "how long the batteries last, before and after a plan, and what drains them",
    async () => (await import("./commands/hours.js")).hours,
  ),
  entry(
    "ask",
    "bank",
    "bank switches: set them, read them, work out their rule",
    async () => (await import("./commands/bank.js")).bank,
  ),
  entry(
    "look",
    "tables",
    "the published figures every limit comes from",
    async () => (await import("./commands/tables.js")).tables,
  ),
  entry("look", "schema", "the JSON Schema of a record", async () => (await import("./commands/schema.js")).schema),
  entry(
    "look",
    "demo",
    "write the invented demo coach, to try everything on",
    async () => (await import("./commands/demo.js")).demo,
  ),
];
