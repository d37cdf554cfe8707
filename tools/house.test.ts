import { readdirSync, readFileSync } from "node:fs";
import { join, relative, sep } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { CORE_ORDER } from "./arrows.js";

const root = fileURLToPath(new URL("..", import.meta.url));
const SKIPPED = new Set(["node_modules", "dist", "out", ".git"]);

function filesBelow(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    if (SKIPPED.has(entry.name)) return [];
    const path = join(folder, entry.name);
    return entry.isDirectory() ? filesBelow(path) : [relative(root, path).split(sep).join("/")];
  });
}

const files = filesBelow(root);
const code = files.filter((file) => /\.(?:ts|tsx|mjs)$/.test(file));
const textOf = (file: string): string => readFileSync(join(root, file), "utf8");
const lineCount = (file: string): number => textOf(file).split("\n").length - 1;

/** Published figures are data, as long as their tables are. */
const isData = (file: string): boolean =>
  file.includes("/tables/") || file.includes("/fixtures/") || file.startsWith("checks/data/");

describe("the house", () => {
  it("has no code file over 400 lines", () => {
    expect(code.filter((file) => !isData(file) && lineCount(file) > 400)).toEqual([]);
  });

  it("has no folder or file named utils, helpers or misc", () => {
    expect(files.filter((file) => /(?:^|\/)(?:utils?|helpers?|misc)(?:\.|\/)/.test(file))).toEqual([]);
  });

  it("names files in kebab case", () => {
    const odd = code.filter((file) => !/^[a-z0-9]+(?:-[a-z0-9]+)*(?:\.[a-z]+)*$/.test(file.split("/").at(-1) ?? ""));
    expect(odd).toEqual([]);
  });

  it("keeps index.ts to re-exports by name", () => {
    const indexes = code.filter(
      (file) => file.endsWith("/src/index.ts") || /packages\/core\/src\/[a-z]+\/index\.ts$/.test(file),
    );
    const bodies = indexes.map((file) => [
      file,
      textOf(file)
        .replace(/\/\*[\s\S]*?\*\//g, "")
        .replace(/export (?:type )?(?:\*|\{[^}]*\}) from "[^"]+";/g, "")
        .trim(),
    ]);
    expect(bodies.filter(([, rest]) => rest !== "")).toEqual([]);
  });

  it("skips no test and leaves nothing to be done later", () => {
    const weak = code.filter(
      (file) =>
        file !== "tools/house.test.ts" &&
        /\b(?:it|test|describe)\.(?:skip|only|todo)\b|\bTODO\b|\bFIXME\b/.test(textOf(file)),
    );
    expect(weak).toEqual([]);
  });

  it("has a page of method for every engine that stands", () => {
    const standing = CORE_ORDER.filter((folder) =>
      files.some((file) => file.startsWith(`packages/core/src/${folder}/`)),
    );
    expect(standing.filter((folder) => !files.includes(`docs/method/${folder}.md`))).toEqual([]);
  });

  it("links only to files that are there", () => {
    const dead = files
      .filter((file) => file.endsWith(".md"))
      .flatMap((file) =>
        [...textOf(file).matchAll(/\]\((?!https?:|#|mailto:)([^)#\s]+)/g)]
          .map((match) => ({ file, to: match[1] as string }))
          .filter(({ to }) => {
            const target = join(file, "..", to).split(sep).join("/");
            return !files.includes(target) && !files.some((each) => each.startsWith(`${target.replace(/\/$/, "")}/`));
          }),
      );
    expect(dead).toEqual([]);
  });

  it("reads nothing outside the project", () => {
    const parts = ["..", "shared"];
    expect(
      files.filter(
        (file) =>
          /\.(?:ts|mjs|json|md|typ|toml|ya?ml)$/.test(file) &&
          !file.includes("package-lock") &&
          textOf(file).includes(parts.join("/")),
      ),
    ).toEqual([]);
  });
});
