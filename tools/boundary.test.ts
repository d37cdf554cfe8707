import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { asksClockOrChance, crossing, crossingsIn, importsOf } from "./boundary.js";

const root = fileURLToPath(new URL("..", import.meta.url));

/** Planted bad imports: the test below must see each of them, or it proves nothing. */
const PLANTED: readonly (readonly [file: string, line: string, why: RegExp])[] = [
  ["packages/core/src/quantity/a.ts", 'import { x } from "../record/index.js";', /may not import/],
  ["packages/core/src/network/a.ts", 'export { x } from "../findings/index.js";', /may not import/],
  ["packages/core/src/trace/a.ts", 'import { x } from "../bench/index.js";', /never imports/],
  ["packages/core/src/findings/rules/a.ts", 'import { x } from "../../network/solve.js";', /by its index/],
  ["packages/core/src/network/deep/a.ts", 'const x = await import("../../plan/index.js");', /may not import/],
  ["packages/core/src/record/a.ts", 'import { readFileSync } from "node:fs";', /core is pure/],
  ["packages/core/src/record/a.ts", 'import lodash from "lodash";', /outside packages/],
  ["packages/core/src/record/a.ts", 'import { pdf } from "@fusebook/paper";', /may not import paper/],
  ["packages/core/src/record/a.ts", 'import "../../../../apps/cli/src/main.js";', /leave its own workspace/],
  ["packages/paper/src/a.ts", 'import { x } from "@fusebook/intake";', /may not import intake/],
  ["packages/core/src/misc/a.ts", 'import { x } from "../record/index.js";', /no such folder/],
];

describe("the boundary test", () => {
  it.each(PLANTED)("sees a planted bad import in %s: %s", (file, line, why) => {
    const found = importsOf(line).map((imports) => crossing(file, imports, false));
    expect(found).toHaveLength(1);
    expect(found[0]?.why).toMatch(why);
  });

  it("allows what the order allows", () => {
    expect(crossing("packages/core/src/findings/rules/a.ts", "../../network/index.js", false)).toBeUndefined();
    expect(crossing("packages/core/src/record/schema/a.ts", "./figure.js", false)).toBeUndefined();
    expect(crossing("apps/cli/src/main.ts", "@fusebook/paper", false)).toBeUndefined();
  });

  it("sees a clock or chance asked for in core", () => {
    expect(asksClockOrChance("const t = Date.now();")).toBe(true);
    expect(asksClockOrChance("const t = new Date();")).toBe(true);
    expect(asksClockOrChance("const x = Math.random();")).toBe(true);
    expect(asksClockOrChance("const day = new Date(iso);")).toBe(false);
  });

  it("finds no crossing in the project", () => {
    expect(crossingsIn(root, ["packages", "apps", "fixtures"])).toEqual([]);
  });

  it("keeps core without ambient types, so that document, process and fetch do not compile", () => {
    const config = JSON.parse(readFileSync(`${root}packages/core/tsconfig.json`, "utf8"));
    const base = JSON.parse(readFileSync(`${root}tsconfig.base.json`, "utf8"));
    expect(config.compilerOptions.types).toEqual([]);
    expect(config.compilerOptions.lib ?? base.compilerOptions.lib).toEqual(["ES2023"]);
  });
});
