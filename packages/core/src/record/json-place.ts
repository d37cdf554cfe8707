/** Where and why a text is no JSON. Line and column count from 1. */
export interface JsonFault {
  readonly line: number;
  readonly column: number;
  readonly wanted: string;
  readonly got: string;
}

const LITERAL = /(?:true|false|null)/y;
const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const ESCAPE = /\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/y;
const SPACE = /[ \t\n\r]*/y;

const placeOf = (text: string, at: number): { line: number; column: number } => {
  const before = text.slice(0, at);
  return { line: before.split("\n").length, column: at - (before.lastIndexOf("\n") + 1) + 1 };
};

/** Where a JSON text that starts at `from` ends; undefined where it does not end well. A loop, for a pattern would run out of stack on a long text. */
const endOfText = (text: string, from: number): number | undefined => {
  if (text[from] !== '"') return undefined;
  for (let at = from + 1; at < text.length; at += 1) {
    const sign = text[at];
    if (sign === '"') return at + 1;
    if (text.charCodeAt(at) < 0x20) return undefined;
    if (sign === "\\") {
      ESCAPE.lastIndex = at;
      if (!ESCAPE.test(text)) return undefined;
      at = ESCAPE.lastIndex - 1;
    }
  }
  return undefined;
};

/**
 * Finds the first place where a text stops being JSON. Asked only after the parser has refused the text: engines do not agree on whether
 * they name a place. Without recursion, so depth does not matter.
 */
export function findJsonFault(text: string): JsonFault {
  const open: ("{" | "[")[] = [];
  let at = 0;
  let state: "value" | "value-or-end" | "key" | "key-or-end" | "colon" | "after" = "value";
  const take = (pattern: RegExp): boolean => {
    pattern.lastIndex = at;
    if (!pattern.test(text)) return false;
    at = pattern.lastIndex;
    return true;
  };
  const takeText = (): boolean => {
    const end = endOfText(text, at);
    if (end !== undefined) at = end;
    return end !== undefined;
  };
  const stop = (wanted: string): JsonFault => ({
    ...placeOf(text, at),
    wanted,
    got: at >= text.length ? "the end of the text" : JSON.stringify(text.slice(at, at + 12)),
  });
  for (;;) {
    take(SPACE);
    const sign = text[at];
    if (state === "after") {
      if (open.length === 0) return stop("nothing more after the document");
      const inner = open.at(-1);
      if (sign === ",") {
        at += 1;
        state = inner === "{" ? "key" : "value";
      } else if (sign === (inner === "{" ? "}" : "]")) {
        at += 1;
        open.pop();
      } else return stop(inner === "{" ? "a comma or }" : "a comma or ]");
    } else if (state === "key" || state === "key-or-end") {
      if (sign === "}" && state === "key-or-end") {
        at += 1;
        open.pop();
        state = "after";
      } else if (takeText()) state = "colon";
      else return stop(state === "key" ? "a field name in quotes (no comma before })" : "a field name in quotes or }");
    } else if (state === "colon") {
      if (sign !== ":") return stop("a colon");
      at += 1;
      state = "value";
    } else if (sign === "]" && state === "value-or-end") {
      at += 1;
      open.pop();
      state = "after";
    } else if (sign === "{" || sign === "[") {
      at += 1;
      open.push(sign);
      state = sign === "{" ? "key-or-end" : "value-or-end";
    } else if (take(LITERAL) || take(NUMBER) || takeText()) state = "after";
    else return stop(sign === '"' ? "text that ends with a quote on its own line" : "a value");
  }
}
