import { readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { ALL_RULES, sourceWords } from "@fusebook/core/findings";
import { expect, it } from "vitest";

const PAGE = fileURLToPath(new URL("../docs/method/findings.md", import.meta.url));
const START = "<!-- rules: start -->";
const END = "<!-- rules: end -->";

/** The table of all rules, as the code has them. */
function rulesTable(): string {
  const rows = ALL_RULES.map((rule) => {
    const how = rule.source.how === "practice" ? "-" : rule.source.how;
    const source = sourceWords({ ...rule.source, how: "practice" });
    return `| \`${rule.code}\` | ${rule.asks} | ${rule.severity} | ${source} | ${how} |`;
  });
  return ["| code | asks | gravest | source | how |", "|---|---|---|---|---|", ...rows].join("\n");
}

it("docs/method/findings.md lists every rule as the code has it (FUSEBOOK_WRITE_DOCS=1 writes it)", () => {
  const page = readFileSync(PAGE, "utf8");
  const [before, rest] = page.split(START);
  const after = rest?.split(END)[1];
  expect(after, "the page has its two markers").toBeDefined();
  const wanted = `${before}${START}\n\n${rulesTable()}\n\n${END}${after}`;
  if (process.env.FUSEBOOK_WRITE_DOCS === "1") writeFileSync(PAGE, wanted);
  expect(readFileSync(PAGE, "utf8")).toBe(wanted);
});
