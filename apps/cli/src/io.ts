import { readFile } from "node:fs/promises";
import type { StopSignal } from "@fusebook/core/plan";
import { FileStore } from "@fusebook/store";
import { Misuse } from "./misuse.js";

/** The outside world of a command, so that a test can stand in for it. */
export interface Io {
  /** The bytes of a file, or of standard input for `-`. */
  read(path: string): Promise<Uint8Array>;
  /** Writes a file whole or not at all (temporary file, then renamed); `-` is standard output. An existing file is kept unless `mayReplace`. */
  write(path: string, content: Uint8Array | string, mayReplace?: boolean): Promise<void>;
  out(text: string): void;
  err(text: string): void;
  /** One line of progress in place of the one before; undefined clears it. Shown only where standard error is a terminal. */
  progress(text: string | undefined): void;
  /** Watches for Ctrl-C until `release`; a second one ends the program. */
  interrupt(): { readonly signal: StopSignal; release(): void };
  /** True where a person is watching: only then is there colour and progress. */
  readonly isTerminal: boolean;
  /** Width of the terminal in columns. */
  readonly columns: number;
  /** Today as an ISO date, the only clock a command sees. */
  readonly today: string;
}

async function standardInput(): Promise<Uint8Array> {
  const parts: Buffer[] = [];
  for await (const part of process.stdin) parts.push(part as Buffer);
  return new Uint8Array(Buffer.concat(parts));
}

const why = (error: unknown): string => {
  const code = (error as { code?: string }).code;
  if (code === "ENOENT") return "no such file; check the name and the folder";
  if (code === "EISDIR") return "that is a folder; name a file in it";
  if (code === "EACCES") return "not allowed to read it; check its permissions";
  return (error as Error).message;
};

/** The line of progress on standard error, cut to the terminal's width. */
function showProgress(text: string | undefined): void {
  if (process.stderr.isTTY !== true) return;
  const width = Math.max(20, process.stderr.columns || 80) - 1;
  process.stderr.write(`\r\u001b[K${text === undefined ? "" : text.slice(0, width)}`);
}

function watchInterrupt(): { readonly signal: StopSignal; release(): void } {
  const controller = new AbortController();
  const stop = () => {
    if (controller.signal.aborted) process.exit(130);
    controller.abort();
  };
  process.on("SIGINT", stop);
  return { signal: controller.signal, release: () => void process.off("SIGINT", stop) };
}

/** The real world: this process's files and streams. */
export function realIo(): Io {
  const store = new FileStore();
  return {
    async read(path) {
      if (path === "-") return standardInput();
      try {
        return new Uint8Array(await readFile(path));
      } catch (error) {
        throw new Misuse(`${path}: ${why(error)}`);
      }
    },
    async write(path, content, mayReplace = false) {
      if (path === "-") {
        await new Promise<void>((done, failed) =>
          process.stdout.write(content, (error) => (error ? failed(error) : done())),
        );
        return;
      }
      const written = await store.write(path, content, { mayReplace });
      if (written.kind === "exists")
        throw new Misuse(`${path}: there is a file already, and it is kept; choose another name or say --replace`);
      if (written.kind === "failed") throw new Misuse(`${path}: not written: ${written.why}`);
    },
    out: (text) => void process.stdout.write(`${text}\n`),
    err: (text) => void process.stderr.write(`${text}\n`),
    progress: showProgress,
    interrupt: watchInterrupt,
    isTerminal: process.stdout.isTTY === true && process.env.NO_COLOR === undefined,
    columns: process.stdout.columns || 100,
    today: new Date().toISOString().slice(0, 10),
  };
}
