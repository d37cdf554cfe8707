import { parentPort } from "node:worker_threads";
import { serveWorker } from "./serve-worker.js";
import type { ToWorker } from "./worker-messages.js";

/** The thread's own file under Node. */
const port = parentPort;
if (port !== null) {
  const take = serveWorker((message) => port.postMessage(message));
  port.on("message", (message: ToWorker) => void take(message));
}
