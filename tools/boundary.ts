import { readdirSync, readFileSync } from "node:fs";
import { join, posix, relative, sep } from "node:path";
import { CORE_FORBIDDEN, CORE_ORDER, MAY_USE_NODE, OUTSIDE, PACKAGE_ARROWS } from "./arrows.js";

/** One import that the table of arrows does not allow. */
export interface Crossing {
  readonly file: string;
  readonly imports: string;
  readonly why: string;
}

const IMPORT = /(?:\bfrom\s*|\bimport\s*\(\s*|\bimport\s+)(["'])([^"'\s]+)\1/g;

const CLOCK_OR_CHANCE = /\bMath\.random\b|\bDate\.now\b|\bnew Date\s*\(\s*\)|\bperformance\.now\b/;

/** True where a source text asks for the time or for chance, which core may not: both are inputs. */
export const asksClockOrChance = (text: string): boolean => CLOCK_OR_CHANCE.test(text.replace(/\/\*[\s\S]*?\*\//g, ""));

/** Every module a source text imports or re-exports, comments left out. */
export function importsOf(text: string): string[] {
  const code = text.replace(/\/\*[\s\S]*?\*\//g, "").replace(/^\s*\/\/.*$/gm, "");
  return [...code.matchAll(IMPORT)].map((match) => match[2] as string);
}

const workspaceOf = (file: string): string | undefined =>
  Object.keys(PACKAGE_ARROWS).find((name) => file.startsWith(`${name}/src/`));

/** What is wrong with one import of one file, or undefined. Paths are from the root, with forward slashes. */
export function crossing(file: string, imports: string, isTest: boolean): Crossing | undefined {
  const workspace = workspaceOf(file);
  if (workspace === undefined) return undefined;
  const bad = (why: string): Crossing => ({ file, imports, why });
  if (imports.startsWith(".")) {
    const target = posix.normalize(posix.join(posix.dirname(file), imports));
    if (!target.startsWith(`${workspace}/src/`))
      return isTest && target.startsWith(`${workspace}/`)
        ? undefined
        : bad("a relative import may not leave its own workspace: import the package by name");
    if (workspace !== "packages/core") return undefined;
    const [from, to] = [file, target].map((path) => path.slice("packages/core/src/".length).split("/")[0] as string);
    if (from === undefined || to === undefined || from === to) return undefined;
    const [fromAt, toAt] = [from, to].map((name) => (CORE_ORDER as readonly string[]).indexOf(name));
    if (fromAt === -1 || toAt === -1)
      return bad(`no such folder in the order: add ${fromAt === -1 ? from : to} to tools/arrows.ts`);
    if ((toAt as number) > (fromAt as number))
      return bad(`${from} stands before ${to} in the way of the data and may not import it`);
    if (CORE_FORBIDDEN.some(([a, b]) => a === from && b === to)) return bad(`${from} never imports ${to}`);
    if (!isTest && !/^\.\.(\/\.\.)*\/[a-z]+\/index\.js$/.test(imports))
      return bad(`import ${to} by its index.js, not by a file inside it`);
    return undefined;
  }
  if (imports.startsWith("@fusebook/")) {
    const to = imports.split("/")[1] as string;
    if (isTest && to === "fixtures") return undefined;
    return PACKAGE_ARROWS[workspace]?.includes(to) ? undefined : bad(`${workspace} may not import ${to}`);
  }
  if (imports.startsWith("node:")) {
    return isTest || (MAY_USE_NODE as readonly string[]).includes(workspace)
      ? undefined
      : bad("core is pure: no disk, no network, no clock");
  }
  if (isTest) return undefined;
  const outside = imports.startsWith("@")
    ? imports.split("/").slice(0, 2).join("/")
    : (imports.split("/")[0] as string);
  return OUTSIDE[workspace]?.includes(outside)
    ? undefined
    : bad(`${outside} is not in the table of outside packages: earn it by a line in docs/adr`);
}

function sourceFiles(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    if (entry.name === "node_modules" || entry.name === "dist") return [];
    const path = join(folder, entry.name);
    if (entry.isDirectory()) return sourceFiles(path);
    return /\.tsx?$/.test(entry.name) ? [path] : [];
  });
}

/** Every crossing in the workspaces below a root folder. */
export function crossingsIn(root: string, under: readonly string[]): Crossing[] {
  return under
    .flatMap((name) => sourceFiles(join(root, name)))
    .flatMap((path) => {
      const file = relative(root, path).split(sep).join("/");
      const isTest = /\.test\.tsx?$/.test(file);
      const text = readFileSync(path, "utf8");
      const impure: Crossing[] =
        !isTest && file.startsWith("packages/core/") && asksClockOrChance(text)
          ? [{ file, imports: "clock or chance", why: "core takes time and seeds as inputs" }]
          : [];
      return [...impure, ...importsOf(text).flatMap((imports) => crossing(file, imports, isTest) ?? [])];
    });
}
