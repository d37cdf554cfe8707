import type { FromWorker, SpawnWorker, ToWorker } from "./worker-messages.js";

/** The part of a browser's `Worker` that is used. */
interface BrowserWorker {
  postMessage(message: ToWorker): void;
  terminate(): void;
  addEventListener(type: "message", listener: (event: { readonly data: FromWorker }) => void): void;
  addEventListener(type: "error", listener: (event: { readonly message?: string }) => void): void;
}
type WorkerMaker = new (url: string | URL, options: { readonly type: "module" }) => BrowserWorker;

/** A module worker of a browser, from the address an app serves it at. */
export const spawnBrowser =
  (workerUrl: string | URL): SpawnWorker =>
  (hears) => {
    const { Worker } = globalThis as unknown as { readonly Worker: WorkerMaker };
    const worker = new Worker(workerUrl, { type: "module" });
    worker.addEventListener("message", (event) => hears.message(event.data));
    worker.addEventListener("error", (event) =>
      hears.broke(event.message ?? `no worker could be started from ${String(workerUrl)}`),
    );
    return { post: (message) => worker.postMessage(message), terminate: () => worker.terminate(), hold: () => {} };
  };
