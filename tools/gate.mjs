// The whole gate: style, then tests. Ends with one line `N passed, N failed` and fails when anything did.
import { spawnSync } from "node:child_process";
import { mkdirSync, readFileSync, rmSync } from "node:fs";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("..", import.meta.url));
const node = (...args) =>
  spawnSync(process.execPath, args, { cwd: root, stdio: ["ignore", "inherit", "inherit"] }).status === 0;

const results = `${root}node_modules/.cache/tests.json`;
mkdirSync(`${root}node_modules/.cache`, { recursive: true });
rmSync(results, { force: true });

let passed = 0;
let failed = 0;
const step = (name, ok) => {
  if (ok) passed += 1;
  else failed += 1;
  console.log(`${ok ? "passed" : "FAILED"}: ${name}`);
};

step(
  "style and import bans (biome)",
  node("node_modules/@biomejs/biome/bin/biome", "check", "--error-on-warnings", "."),
);
step("types, tests and checks included (tsc)", node("node_modules/typescript/bin/tsc", "-b"));
const ran = node(
  "node_modules/vitest/vitest.mjs",
  "run",
  "--reporter=dot",
  "--reporter=json",
  `--outputFile.json=${results}`,
  ...process.argv.slice(2),
);
try {
  const report = JSON.parse(readFileSync(results, "utf8"));
  passed += report.numPassedTests;
  failed +=
    report.numFailedTests +
    report.testResults.filter((file) => file.status === "failed" && file.assertionResults.length === 0).length;
  if (!ran && failed === 0) failed += 1;
} catch {
  step("the test runner wrote its results", false);
}

console.log(`${passed} passed, ${failed} failed`);
process.exit(failed === 0 && ran ? 0 : 1);
