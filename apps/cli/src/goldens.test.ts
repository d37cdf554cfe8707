import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { demoFiles } from "@fusebook/fixtures";
import { describe, expect, it } from "vitest";
import { COMMANDS } from "./commands.js";
import { GOLDEN_LINES } from "./golden-lines.js";
import { memoryIo } from "./memory-io.js";
import { runLine } from "./run.js";

/*
 * What every command says on the demo coach, kept whole. A change of words or of a number shows here as a difference to be read. With
 * FUSEBOOK_WRITE_GOLDENS=1 the files are written anew; read the difference before it is committed.
 */

const FOLDER = fileURLToPath(new URL("../goldens/", import.meta.url));
const MAY_WRITE = process.env.FUSEBOOK_WRITE_GOLDENS === "1";
const demo = Object.fromEntries(demoFiles().map((file) => [file.name, file.content]));

async function golden(words: readonly string[]): Promise<string> {
  const io = memoryIo(demo);
  const code = await runLine(words, COMMANDS, io);
  const written = [...io.files.keys()].filter((name) => !(name in demo)).sort();
  return [
    `$ fusebook ${words.join(" ")}`,
    ...(io.complained.length > 0 ? [...io.complained.map((text) => text.replace(/^/gm, "! ")), ""] : []),
    ...io.said,
    `(exit code ${code}${written.length > 0 ? `; written: ${written.join(", ")}` : ""})`,
    "",
  ].join("\n");
}

function compare(name: string, text: string): void {
  const file = `${FOLDER}${name}.txt`;
  if (MAY_WRITE) {
    mkdirSync(FOLDER, { recursive: true });
    writeFileSync(file, text);
  }
  const kept = existsSync(file) ? readFileSync(file, "utf8").replaceAll("\r\n", "\n") : "";
  expect(text, `${name}.txt differs; FUSEBOOK_WRITE_GOLDENS=1 writes it anew`).toBe(kept);
}

describe("what a command says on the demo coach is what it said before", () => {
  it.each(Object.entries(GOLDEN_LINES))("%s", async (name, line) => {
    compare(name, await golden(line.split(" ")));
  });

  it.each(COMMANDS.map((command) => command.name))("%s --help", async (name) => {
    compare(`help-${name}`, await golden([name, "--help"]));
  });

  it("the overview", async () => {
    compare("help", await golden(["--help"]));
  });

  it("no command is without a line here, and no file is left over", () => {
    const first = new Set(Object.values(GOLDEN_LINES).map((line) => line.split(" ")[0]));
    expect(COMMANDS.map((command) => command.name).filter((name) => !first.has(name))).toEqual([]);
    const wanted = ["help", ...Object.keys(GOLDEN_LINES), ...COMMANDS.map((command) => `help-${command.name}`)].map(
      (name) => `${name}.txt`,
    );
    expect(readdirSync(FOLDER).sort()).toEqual(wanted.sort());
  });

  it("no path of a machine, no time of day and no date but the demo's stands in one", () => {
    const odd = readdirSync(FOLDER).flatMap((file) => {
      const text = readFileSync(`${FOLDER}${file}`, "utf8");
      return [...text.matchAll(/(?:\/home\/|\/tmp\/|\/Users\/|[A-Z]:\\|\b\d\d:\d\d:\d\d\b|node_modules)/g)].map(
        ([found]) => `${file}: ${found}`,
      );
    });
    expect(odd).toEqual([]);
  });
});
