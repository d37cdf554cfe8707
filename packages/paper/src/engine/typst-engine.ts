import { loadFonts } from "@myriaddreamin/typst.ts";
import { CompileFormatEnum, createTypstCompiler, type TypstCompiler } from "@myriaddreamin/typst.ts/compiler";
import type { PaperEngine, PaperFiles, Setting } from "./paper-engine.js";
import { readTypeface } from "./typeface.js";

/** What the typesetter is started with: its WebAssembly and the typeface files, as bytes. Nothing is fetched. */
export interface TypstParts {
  readonly wasm: Uint8Array<ArrayBuffer>;
  readonly fonts: readonly Uint8Array[];
  /** The house's markup, by path; always there beside a document's own files. */
  readonly markup: PaperFiles;
}

const utf8 = new TextEncoder();

/** Starts the typesetter (about 0.3 s) and returns it behind our port. Pure of disk and network: the bytes are handed in. */
export async function startTypst(parts: TypstParts): Promise<PaperEngine> {
  const compiler = createTypstCompiler();
  await compiler.init({
    // The default wrapper passes the WebAssembly in a manner its own binding warns about.
    getWrapper: async () => {
      const binding = await import("@myriaddreamin/typst-ts-web-compiler");
      return { ...binding, default: (bytes: Uint8Array<ArrayBuffer>) => binding.default({ module_or_path: bytes }) };
    },
    getModule: () => parts.wasm,
    // Without `assets: false` it would fetch typefaces from outside.
    beforeBuild: [loadFonts([...parts.fonts], { assets: false })],
  });
  let queue: Promise<unknown> = Promise.resolve();
  return {
    typefaces: parts.fonts.map(readTypeface),
    pdf(main, files) {
      // Instances share module state, so documents are set one after the other.
      const next = queue.then(() => setOne(compiler, main, new Map([...parts.markup, ...files])));
      queue = next.catch(() => undefined);
      return next;
    },
  };
}

async function setOne(compiler: TypstCompiler, main: string, files: PaperFiles): Promise<Setting> {
  compiler.resetShadow();
  for (const [path, content] of files)
    compiler.mapShadow(path, typeof content === "string" ? utf8.encode(content) : content);
  try {
    const { result, diagnostics } = await compiler.compile({
      mainFilePath: main,
      format: CompileFormatEnum.pdf,
      diagnostics: "unix",
      inputs: {},
    });
    const faults = (diagnostics ?? []).map(String);
    return result === undefined || faults.length > 0 ? { kind: "refused", faults } : { kind: "set", pdf: result };
  } finally {
    compiler.resetShadow();
    await compiler.reset();
  }
}
