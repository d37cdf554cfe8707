import { createRequire } from "node:module";
import { Worker } from "node:worker_threads";
import type { FromWorker, SpawnWorker } from "./worker-messages.js";

/** A worker thread of Node. Its file is asked for by the package's name, so that it is the built one wherever this file is read from. */
export const spawnNode: SpawnWorker = (hears) => {
  const file = createRequire(import.meta.url).resolve("@fusebook/solver/worker-node");
  const worker = new Worker(file, { execArgv: [] });
  worker.unref();
  worker.on("message", (message: FromWorker) => hears.message(message));
  worker.on("error", (error) => hears.broke(error.message));
  worker.on("exit", (code) => hears.broke(`its thread ended (${code})`));
  return {
    post: (message) => worker.postMessage(message),
    terminate: () => void worker.terminate(),
    hold: (isWaitedFor) => (isWaitedFor ? worker.ref() : worker.unref()),
  };
};
