// Runs every bench of this folder, or those named: `node speed/run.mjs network switchbank`. Each prints its figures; the table at the end says which
// kept their limits. Exit code 1 where one did not.
import { spawnSync } from "node:child_process";
import { readdirSync } from "node:fs";
import { fileURLToPath } from "node:url";

const here = fileURLToPath(new URL(".", import.meta.url));
/** What is in the folder but is no bench by itself. */
const PIECES = new Set(["run.mjs", "netlist.mjs", "sampling-memory.mjs", "plan-retrofits.mjs"]);
const benches = readdirSync(here)
  .filter((name) => name.endsWith(".mjs") && !PIECES.has(name))
  .map((name) => name.slice(0, -".mjs".length))
  .sort();

const named = process.argv.slice(2);
const unknown = named.filter((name) => !benches.includes(name));
if (unknown.length > 0) {
  console.error(`speed: ${unknown.join(", ")}: no such bench; there are ${benches.join(", ")}`);
  process.exit(2);
}

const rows = [];
for (const bench of named.length > 0 ? named : benches) {
  console.log(`\n== ${bench}`);
  const start = performance.now();
  const done = spawnSync(process.execPath, [`${here}${bench}.mjs`], { stdio: "inherit" });
  rows.push({ bench, kept: done.status === 0, seconds: (performance.now() - start) / 1000 });
}

console.log(`\n${"bench".padEnd(16)}${"limits".padEnd(10)}seconds`);
for (const { bench, kept, seconds } of rows)
  console.log(`${bench.padEnd(16)}${(kept ? "kept" : "NOT KEPT").padEnd(10)}${seconds.toFixed(1)}`);
if (rows.some((row) => !row.kept)) process.exitCode = 1;
