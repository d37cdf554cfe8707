import { mkdtemp, readdir, readFile, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { beforeEach, describe, expect, it } from "vitest";
import { FileStore } from "./file-store.js";

let folder = "";
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), "fusebook-store-"));
});

describe("files written whole or not at all", () => {
  it("writes a new file and leaves no temporary one", async () => {
    expect(await new FileStore().write(join(folder, "a.json"), "one")).toEqual({ kind: "written" });
    expect(await readdir(folder)).toEqual(["a.json"]);
    expect(await readFile(join(folder, "a.json"), "utf8")).toBe("one");
  });

  it("keeps a file that is there, unless told to replace it", async () => {
    const path = join(folder, "a.json");
    await writeFile(path, "mine");
    expect(await new FileStore().write(path, "two")).toEqual({ kind: "exists" });
    expect(await readFile(path, "utf8")).toBe("mine");
    expect(await new FileStore().write(path, "two", { mayReplace: true })).toEqual({ kind: "written" });
    expect(await readFile(path, "utf8")).toBe("two");
  });

  it("says what to do where the folder is not there or the name is a folder", async () => {
    const missing = await new FileStore().write(join(folder, "no", "a.json"), "x");
    expect(missing).toMatchObject({ kind: "failed" });
    expect((missing as { why: string }).why).toContain("make it first");
    expect(await new FileStore().write(folder, "x", { mayReplace: true })).toMatchObject({ kind: "failed" });
    expect(await readdir(folder)).toEqual([]);
  });
});
