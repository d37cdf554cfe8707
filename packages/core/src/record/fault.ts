/** One thing wrong with a document, by path. */
export interface SchemaFault {
  /** JSON path from the root: `circuits[3].fuse.ratedA`; empty for the document itself. */
  readonly path: string;
  readonly code: "json" | "too-big" | "too-deep" | "not-an-object" | "format" | "newer-format" | "schema";
  /** What is wanted, with unit and bound, what was got; what to do next. */
  readonly message: string;
}

/** A fault as one line: where: what is wanted, got what; what to do next [code]. */
export const faultText = (fault: SchemaFault): string =>
  `${fault.path === "" ? "the document" : fault.path}: ${fault.message} [${fault.code}]`;

/** A path as it is written in messages: `circuits[3].fuse.ratedA`. */
export const pathText = (path: readonly PropertyKey[]): string =>
  path.reduce<string>((text, key) => {
    if (typeof key === "number") return `${text}[${key}]`;
    const name = String(key);
    if (!/^[A-Za-z_$][\w$-]*$/.test(name)) return `${text}[${JSON.stringify(name)}]`;
    return text === "" ? name : `${text}.${name}`;
  }, "");

const MAX_SHOWN = 40;

/** What was got, short enough for a message. */
export const shown = (value: unknown): string => {
  if (value === undefined) return "nothing";
  if (value === null) return "null";
  if (Array.isArray(value)) return `a list of ${value.length}`;
  if (typeof value === "object") return "an object";
  if (typeof value === "string") {
    const text = JSON.stringify(value);
    return text.length > MAX_SHOWN ? `the text ${text.slice(0, MAX_SHOWN)}…"` : `the text ${text}`;
  }
  return `${typeof value === "boolean" ? "" : "the number "}${String(value)}`;
};
