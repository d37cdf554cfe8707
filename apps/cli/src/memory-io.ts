import type { Io } from "./io.js";
import { Misuse } from "./misuse.js";

/** A world without a disk, for tests: files in a map, what was said kept. */
export interface MemoryIo extends Io {
  readonly files: Map<string, Uint8Array>;
  readonly said: string[];
  readonly complained: string[];
  /** Lines of progress shown, clearings left out. */
  readonly shown: string[];
  /** As Ctrl-C does. */
  press(): void;
}

export function memoryIo(files: Readonly<Record<string, Uint8Array | string>> = {}): MemoryIo {
  const bytes = (content: Uint8Array | string): Uint8Array =>
    typeof content === "string" ? new TextEncoder().encode(content) : content;
  const kept = new Map(Object.entries(files).map(([name, content]) => [name, bytes(content)]));
  const said: string[] = [];
  const complained: string[] = [];
  const shown: string[] = [];
  const controller = new AbortController();
  return {
    files: kept,
    said,
    complained,
    shown,
    press: () => controller.abort(),
    progress: (text) => {
      if (text !== undefined) shown.push(text);
    },
    interrupt: () => ({ signal: controller.signal, release: () => undefined }),
    async read(path) {
      const content = kept.get(path);
      if (content === undefined) throw new Misuse(`${path}: no such file; check the name and the folder`);
      return content;
    },
    async write(path, content, mayReplace = false) {
      if (path === "-") said.push(typeof content === "string" ? content : `${content.length} bytes`);
      else if (kept.has(path) && !mayReplace)
        throw new Misuse(`${path}: there is a file already, and it is kept; choose another name or say --replace`);
      else kept.set(path, bytes(content));
    },
    out: (text) => void said.push(text),
    err: (text) => void complained.push(text),
    isTerminal: false,
    columns: 100,
    today: "2026-05-09",
  };
}
