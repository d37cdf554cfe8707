import { randomUUID } from "node:crypto";
import { access, open, rename, rm, stat } from "node:fs/promises";
import { basename, dirname, join } from "node:path";

export type Written =
  | { readonly kind: "written" }
  | { readonly kind: "exists" }
  | { readonly kind: "failed"; readonly why: string };

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

/** Files on a disk, written whole or not at all. */
export class FileStore {
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
      if (options.mayReplace !== true && (await isThere(path))) {
        await rm(temporary, { force: true });
        return { kind: "exists" };
      }
      await rename(temporary, path);
      return { kind: "written" };
    } catch (error) {
      await rm(temporary, { force: true });
      return { kind: "failed", why: reason(error, path) };
    }
  }
}
