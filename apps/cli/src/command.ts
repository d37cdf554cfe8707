import type { ParseArgsConfig } from "node:util";
import type { Io } from "./io.js";

/** Exit codes, the same for every command. */
export const EXIT = { fine: 0, findings: 1, misuse: 2 } as const;

export type Options = NonNullable<ParseArgsConfig["options"]>;
export type Values = Readonly<Record<string, string | boolean | (string | boolean)[] | undefined>>;

export interface Invocation {
  readonly values: Values;
  readonly positionals: readonly string[];
  readonly io: Io;
}

/** One command: its help teaches by example. */
export interface Command {
  readonly name: string;
  /** What follows `fusebook NAME` on the usage line. */
  readonly usage: string;
  readonly about: string;
  readonly examples: readonly (readonly [line: string, what: string])[];
  readonly options: Options;
  /** One line for each option, in the order shown. */
  readonly optionHelp: Readonly<Record<string, string>>;
  readonly minPositionals?: number;
  readonly maxPositionals?: number;
  run(invocation: Invocation): Promise<number>;
}

export const COMMON_OPTIONS: Options = {
  help: { type: "boolean", short: "h" },
  json: { type: "boolean" },
  units: { type: "string" },
};

export const text = (values: Values, name: string): string | undefined => {
  const value = values[name];
  return typeof value === "string" ? value : undefined;
};

export const flag = (values: Values, name: string): boolean => values[name] === true;

/** Every value of an option that may be given more than once, in the order of the line. */
export const texts = (values: Values, name: string): readonly string[] => {
  const value = values[name];
  return Array.isArray(value) ? value.filter((each) => typeof each === "string") : [];
};
