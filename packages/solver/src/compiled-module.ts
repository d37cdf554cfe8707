import type { HighsPlace } from "./load-highs.js";

/** The platform's compiler, asked for without its ambient types. */
const compiler = (globalThis as unknown as { readonly WebAssembly: { compile(bytes: Uint8Array): Promise<object> } })
  .WebAssembly;

/** One compiled program for each address, for as long as the program runs. */
const compiled = new Map<string, Promise<object | undefined>>();

/**
 * The place with the solver's program compiled, once for all workers to come: they share the machine code, also what is made better while a worker runs,
 * so a worker that takes the place of an ended one is warm from the start. Where it cannot be read here, each worker loads it by itself, and names what is wrong.
 */
export async function withModule(
  place: HighsPlace,
  address: string,
  read: () => Promise<Uint8Array>,
): Promise<HighsPlace> {
  if (place.wasmBytes !== undefined || place.wasmModule !== undefined) return place;
  let module = compiled.get(address);
  if (module === undefined) {
    module = read().then(
      (bytes) => compiler.compile(bytes),
      () => undefined,
    );
    compiled.set(address, module);
  }
  const wasmModule = await module.catch(() => undefined);
  if (wasmModule === undefined) compiled.delete(address);
  return wasmModule === undefined ? place : { ...place, wasmModule };
}
