import { MilpError } from "@fusebook/core/plan";
import type { Highs, InitOptions } from "highs";

/** Where the solver's WebAssembly file is, where it does not lie beside its loader. */
export interface HighsPlace {
  /** Address of `highs.wasm` (a browser app serves it as a file of its own). */
  readonly wasmUrl?: string;
  /** The file's bytes, where the app holds them already. */
  readonly wasmBytes?: Uint8Array;
  /** The program compiled already (a `WebAssembly.Module`). */
  readonly wasmModule?: object;
}

/** Brings the solver's own loader; a test hands over one that fails. */
export type HighsLoader = (options: InitOptions) => Promise<Highs>;

const packaged: HighsLoader = async (options) => {
  const module: unknown = await import("highs");
  return (module as { default: HighsLoader }).default(options);
};

/** Loads the solver. Rejects with `solver-not-loaded`, naming what to do. */
export async function loadHighs(place: HighsPlace = {}, loader: HighsLoader = packaged): Promise<Highs> {
  try {
    return await loader({
      ...(place.wasmUrl === undefined ? {} : { locateFile: () => place.wasmUrl as string }),
      ...(place.wasmBytes === undefined ? {} : { wasmBinary: place.wasmBytes }),
      ...(place.wasmModule === undefined
        ? {}
        : { wasmModule: place.wasmModule as NonNullable<InitOptions["wasmModule"]> }),
    });
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    throw new MilpError(
      "solver-not-loaded",
      `the solver (highs.wasm${place.wasmUrl === undefined ? "" : ` from ${place.wasmUrl}`}) did not load: ${why}; ` +
        "install the packages again, or give the address of highs.wasm as wasmUrl; without a solver, plans that move no wire still work",
    );
  }
}
