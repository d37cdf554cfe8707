import { serveWorker } from "./serve-worker.js";
import type { FromWorker, ToWorker } from "./worker-messages.js";

/** The part of a browser worker's global scope that is used; the platform's own types are not asked for. */
interface WorkerScope {
  postMessage(message: FromWorker): void;
  addEventListener(type: "message", listener: (event: { readonly data: ToWorker }) => void): void;
}

/** The worker's own file in a browser: `new Worker(url, { type: "module" })`. */
const scope = globalThis as unknown as WorkerScope;
const take = serveWorker((message) => scope.postMessage(message));
scope.addEventListener("message", (event) => void take(event.data));
