import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { FONT_FILES } from "./font-files.js";
import type { PaperEngine } from "./paper-engine.js";
import { startTypst } from "./typst-engine.js";

const fromPackage = (path: string) => readFile(new URL(`../../${path}`, import.meta.url));

let engine: Promise<PaperEngine> | undefined;

/** The paper engine in Node: reads the typesetter and the typefaces from disk once. The only file of this package that touches a disk. */
export function loadPaperEngine(): Promise<PaperEngine> {
  engine ??= start();
  return engine;
}

async function start(): Promise<PaperEngine> {
  const wasmPath = createRequire(import.meta.url).resolve(
    "@myriaddreamin/typst-ts-web-compiler/pkg/typst_ts_web_compiler_bg.wasm",
  );
  const [wasm, markup, ...fonts] = await Promise.all([
    readFile(wasmPath),
    fromPackage("markup/paper.typ"),
    ...FONT_FILES.map((name) => fromPackage(`fonts/${name}`)),
  ]);
  return startTypst({
    wasm: new Uint8Array(wasm),
    fonts: fonts.map((font) => new Uint8Array(font)),
    markup: new Map([["/paper.typ", new Uint8Array(markup)]]),
  });
}
