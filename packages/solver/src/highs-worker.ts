import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import type { MilpSolver } from "@fusebook/core/plan";
import { withModule } from "./compiled-module.js";
import type { HighsPlace } from "./load-highs.js";
import { spawnNode } from "./spawn-node.js";
import { workerSolver } from "./worker-solver.js";

/** The solver in a worker thread of Node: a solve can be stopped at any time. `close` ends the thread; an idle one keeps no program alive. */
export const highsWorker = (place: HighsPlace = {}): MilpSolver =>
  workerSolver(spawnNode, place, async (from) => {
    const address = from.wasmUrl ?? createRequire(import.meta.url).resolve("highs/runtime");
    return withModule(from, address, () => readFile(address.startsWith("file:") ? new URL(address) : address));
  });
