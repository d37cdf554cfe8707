import { readFileSync } from "node:fs";
import { createServer, type Server } from "node:http";
import { createRequire } from "node:module";
import type { AddressInfo } from "node:net";
import { fileURLToPath } from "node:url";
import { writeRecord } from "@fusebook/core/record";
import { demoRecordText, generateCoach } from "@fusebook/fixtures";
import { highsWorker } from "@fusebook/solver";
import type { Browser } from "playwright-core";
import { rolldown } from "rolldown";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { startChromium } from "./chromium.js";
import { plansAsText } from "./plan-same-everywhere.js";
import { MOVE_FAMILIES, tinyMoves } from "./plan-tiny-coach-moves.js";

/*
 * Same input, same plan, on Node and in a browser: core and the solver are bundled as an app bundles them, served on this machine alone, and run in a real Chromium.
 * What it says is compared with what Node says as text, byte for byte: plan ids, figures, order, and every digit of the solver's answer.
 */

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

/** One file for the browser, from the sources. */
async function bundled(input: string): Promise<string> {
  const bundle = await rolldown({
    input: here(input),
    platform: "browser",
    logLevel: "silent",
    resolve: {
      extensionAlias: { ".js": [".ts", ".js"] },
      alias: {
        "@fusebook/core/findings": here("../packages/core/src/findings/index.ts"),
        "@fusebook/core/plan": here("../packages/core/src/plan/index.ts"),
        "@fusebook/core/record": here("../packages/core/src/record/index.ts"),
        "@fusebook/solver/browser": here("../packages/solver/src/browser.ts"),
      },
    },
  });
  const { output } = await bundle.generate({ format: "esm", codeSplitting: false });
  await bundle.close();
  const [first, ...more] = output;
  if (more.length > 0 || first.type !== "chunk") throw new Error(`${input}: wanted one file`);
  return first.code;
}

/** A coach of the generator, of which every circuit on a module may go to any channel of its module or of the next. */
function movable(seed: number, circuits: number): string {
  const { record } = generateCoach({ seed, circuits });
  const modules = (record.modules ?? []).map((module) => module.id);
  return writeRecord({
    ...record,
    circuits: (record.circuits ?? []).map((circuit) => {
      const at = circuit.module === undefined ? -1 : modules.indexOf(circuit.module);
      const next = modules[at + 1];
      return at < 0 ? circuit : { ...circuit, canMove: true, ...(next === undefined ? {} : { reach: [next] }) };
    }),
    controls: (record.controls ?? []).map((control) => ({ ...control, program: "editable" as const })),
  });
}

/** A seeded coach of each family, with its job in the record. */
const seeded = MOVE_FAMILIES.flatMap((family) =>
  [11, 12].map((seed) => {
    const { record, job } = tinyMoves(seed, family);
    return { name: `${family} ${seed}`, text: writeRecord({ ...record, jobs: [job] }) };
  }),
);

const COACHES = [
  { name: "the demo coach", text: demoRecordText() },
  { name: "a generated coach of 24 circuits", text: movable(5, 24) },
  { name: "a generated coach of 40 circuits", text: movable(9, 40) },
  ...seeded,
];

describe("the same record in a real browser", () => {
  let browser: Browser | undefined;
  let server: Server;
  let said: string[] = [];
  let onNode: string[] = [];

  beforeAll(async () => {
    const started = await startChromium();
    if (started.browser === undefined)
      throw new Error(
        `no Chromium could be started; name one in FUSEBOOK_CHROMIUM. Tried:\n  ${started.tried.join("\n  ")}`,
      );
    browser = started.browser;
    console.log(started.used);
    const [page, worker] = await Promise.all([
      bundled("./plan-browser-page.ts"),
      bundled("../packages/solver/src/worker-browser.ts"),
    ]);
    const wasm = readFileSync(createRequire(here("../packages/solver/package.json")).resolve("highs/runtime"));
    const files: Readonly<Record<string, readonly [type: string, body: string | Uint8Array]>> = {
      "/": ["text/html", '<!doctype html><title>plans</title><script type="module" src="/page.js"></script>'],
      "/page.js": ["text/javascript", page],
      "/worker.js": ["text/javascript", worker],
      "/highs.wasm": ["application/wasm", wasm],
    };
    server = createServer((request, response) => {
      const file = files[request.url ?? ""];
      response.writeHead(file === undefined ? 404 : 200, { "content-type": file?.[0] ?? "text/plain" });
      response.end(file?.[1] ?? "");
    });
    await new Promise<void>((listening) => server.listen(0, "127.0.0.1", listening));
    const tab = await browser.newPage();
    const asked: string[] = [];
    tab.on("request", (request) => void asked.push(request.url()));
    const home = `http://127.0.0.1:${(server.address() as AddressInfo).port}/`;
    await tab.goto(home);
    await tab.waitForFunction("typeof plansOf === 'function'");
    const texts = COACHES.map((coach) => coach.text);
    said = (await tab.evaluate(`plansOf(${JSON.stringify(texts)})`)) as string[];
    expect(asked.filter((url) => !url.startsWith(home))).toEqual([]);
    const solver = highsWorker();
    onNode = [];
    for (const text of texts) onNode.push(await plansAsText(text, solver));
    solver.close();
  }, 180_000);

  afterAll(async () => {
    await browser?.close();
    server?.close();
  });

  it.each(COACHES.map(({ name }, i) => [name, i] as const))("gives byte for byte what Node gives: %s", (_, i) => {
    expect(said[i]?.length).toBeGreaterThan(100);
    expect(said[i]).toBe(onNode[i]);
  });

  it("is asked of coaches in which wires move, stock is used, and nothing can be done", () => {
    const plans = onNode.map((text) => JSON.parse(text).plan);
    expect(plans.filter((plan) => plan?.moves.length > 0).length).toBeGreaterThan(5);
    expect(new Set(plans.map((plan) => plan?.id)).size).toBeGreaterThan(10);
  });
});
