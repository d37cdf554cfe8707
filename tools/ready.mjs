// Installs and builds what is missing, and nothing twice. Uses only what Node itself brings, so it runs in a fresh clone.
import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("..", import.meta.url));
const [major, minor] = process.versions.node.split(".").map(Number);
if (major < 20 || (major === 20 && minor < 19)) {
  console.error(
    `Fusebook needs Node.js 20.19 or newer; this is ${process.versions.node}. Install a newer Node.js and try again.`,
  );
  process.exit(2);
}

const run = (command, args) => {
  const done = spawnSync(command, args, {
    cwd: root,
    stdio: ["ignore", "inherit", "inherit"],
    shell: process.platform === "win32",
  });
  if (done.status !== 0) {
    console.error(`\n${command} ${args.join(" ")} did not finish (exit ${done.status ?? done.signal}).`);
    process.exit(done.status ?? 1);
  }
};

const stampFile = `${root}node_modules/.fusebook-installed`;
const wanted = createHash("sha256")
  .update(readFileSync(`${root}package-lock.json`))
  .digest("hex");
const installed = existsSync(stampFile) ? readFileSync(stampFile, "utf8") : "";
if (installed !== wanted) {
  // A tree that npm has laid out already is only brought up to date; `npm ci` would empty it first.
  const isThere = existsSync(`${root}node_modules/.package-lock.json`);
  console.error(`Installing what is missing (npm ${isThere ? "install" : "ci"}) ...`);
  run("npm", [isThere ? "install" : "ci", "--no-audit", "--no-fund", "--loglevel=error"]);
  mkdirSync(`${root}node_modules`, { recursive: true });
  writeFileSync(stampFile, wanted);
}

// The compiler keeps its own record of what is up to date, so this is quick when nothing changed.
if (!existsSync(`${root}apps/cli/dist/main.js`)) console.error("Building ...");
run(process.execPath, [`${root}node_modules/typescript/bin/tsc`, "-b", "apps/cli"]);
