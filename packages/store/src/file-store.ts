import { randomUUID } from "node:crypto";
import { access, link, open, readFile, rename, rm, stat } from "node:fs/promises";
import { basename, dirname, join } from "node:path";

export type Written =
  | { readonly kind: "written" }
  | { readonly kind: "exists" }
  | { readonly kind: "failed"; readonly why: string };

export type ReadFile =
  | { readonly kind: "read"; readonly bytes: Uint8Array }
  | { readonly kind: "failed"; readonly why: string };

/** Enough for any survey or record; photos are read one by one. */
const MAX_READ_BYTES = 256 * 1024 * 1024;

const readReason = (error: unknown): string => {
  const code = (error as { code?: string }).code;
  if (code === "ENOENT") return "there is no such file; check the name and the folder";
  if (code === "EACCES" || code === "EPERM") return "not allowed to read it; check its permissions";
  return (error as Error).message;
};

const isThere = (path: string): Promise<boolean> =>
  access(path).then(
    () => true,
    () => false,
  );

const reason = (error: unknown, path: string): string => {
  const code = (error as { code?: string }).code;
  if (code === "ENOENT") return `there is no folder ${dirname(path)}; make it first`;
  if (code === "ENOSPC") return "the disk is full; free some room, the old file is untouched";
  if (code === "EACCES" || code === "EPERM" || code === "EROFS")
    return "not allowed to write there; choose another folder";
  if (code === "EISDIR") return "that is a folder; name a file in it";
  return (error as Error).message;
};

/** Puts a whole temporary file under a name that no file has; false where one has it. Never over another file, even one made just now. */
const putNew = async (temporary: string, path: string): Promise<boolean> => {
  try {
    await link(temporary, path);
    await rm(temporary, { force: true });
    return true;
  } catch (error) {
    const code = (error as { code?: string }).code;
    if (code === "EEXIST") return false;
    // Disks without hard links (memory cards, some shares): look, then rename.
    if (await isThere(path)) return false;
    await rename(temporary, path);
    return true;
  }
};

/** Files on a disk, read within a bound, written whole or not at all. */
export class FileStore {
  /** The bytes of a file. Never throws for what the disk does; a file above the bound is not read. */
  async read(path: string, options: { readonly maxBytes?: number } = {}): Promise<ReadFile> {
    const maxBytes = options.maxBytes ?? MAX_READ_BYTES;
    try {
      const found = await stat(path);
      if (found.isDirectory()) return { kind: "failed", why: "that is a folder; name a file in it" };
      if (found.size > maxBytes)
        return {
          kind: "failed",
          why: `wanted at most ${maxBytes} bytes, got ${found.size}; check that it is the right file, and keep photos outside it`,
        };
      return { kind: "read", bytes: new Uint8Array(await readFile(path)) };
    } catch (error) {
      return { kind: "failed", why: readReason(error) };
    }
  }

  /**
   * Writes to a temporary file in the same folder, flushes it, then renames it over the name. A file that is there is kept unless `mayReplace`.
   * Never throws for what the disk does: the outcome says why and what to do.
   */
  async write(
    path: string,
    content: Uint8Array | string,
    options: { readonly mayReplace?: boolean } = {},
  ): Promise<Written> {
    const before = await stat(path).catch(() => undefined);
    if (before?.isDirectory()) return { kind: "failed", why: "that is a folder; name a file in it" };
    if (before !== undefined && options.mayReplace !== true) return { kind: "exists" };
    const temporary = join(dirname(path), `.${basename(path)}.${randomUUID()}.part`);
    try {
      const file = await open(temporary, "wx");
      try {
        await file.writeFile(content);
        await file.sync();
      } finally {
        await file.close();
      }
      if (options.mayReplace === true) await rename(temporary, path);
      else if (!(await putNew(temporary, path))) {
        await rm(temporary, { force: true });
        return { kind: "exists" };
      }
      return { kind: "written" };
    } catch (error) {
      await rm(temporary, { force: true });
      return { kind: "failed", why: reason(error, path) };
    }
  }
}
