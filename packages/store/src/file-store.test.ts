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

  it("gives one of many writers at once the name, whole, and tells the others", async () => {
    const path = join(folder, "a.json");
    const texts = Array.from({ length: 20 }, (_, i) => `${i}`.repeat(50_000));
    const outcomes = await Promise.all(texts.map((text) => new FileStore().write(path, text)));
    expect(outcomes.filter((outcome) => outcome.kind === "written")).toHaveLength(1);
    expect(outcomes.filter((outcome) => outcome.kind === "exists")).toHaveLength(19);
    expect(texts).toContain(await readFile(path, "utf8"));
    expect(await readdir(folder)).toEqual(["a.json"]);
  });

  it("replaces a file as a whole: a reader sees the old text or the new one, never a part", async () => {
    const path = join(folder, "a.json");
    const store = new FileStore();
    const texts = ["a".repeat(200_000), "b".repeat(300_000)];
    await store.write(path, texts[0] ?? "");
    const writing = (async () => {
      for (let i = 0; i < 30; i += 1) await store.write(path, texts[i % 2] ?? "", { mayReplace: true });
    })();
    for (let i = 0; i < 60; i += 1) expect(texts).toContain(await readFile(path, "utf8"));
    await writing;
  });
});

describe("reading a file", () => {
  it("gives its bytes, and leaves it as it is", async () => {
    const path = join(folder, "survey.csv");
    await writeFile(path, "Ckt,Load");
    expect(await new FileStore().read(path)).toEqual({ kind: "read", bytes: new TextEncoder().encode("Ckt,Load") });
    expect(await readFile(path, "utf8")).toBe("Ckt,Load");
  });

  it("says what to do where there is no such file, where it is a folder, and where it is too large", async () => {
    const store = new FileStore();
    expect(await store.read(join(folder, "none"))).toEqual({
      kind: "failed",
      why: "there is no such file; check the name and the folder",
    });
    expect(await store.read(folder)).toMatchObject({ kind: "failed", why: "that is a folder; name a file in it" });
    const path = join(folder, "big");
    await writeFile(path, "12345");
    expect(await store.read(path, { maxBytes: 4 })).toMatchObject({ kind: "failed" });
  });
});
