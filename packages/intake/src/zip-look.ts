import { unzipSync } from "fflate";
import { MAX_UNPACKED_BYTES, megabytes } from "./bounds.js";

/** The XML parts of a workbook, or why they cannot be had. */
export type ZipLook =
  | { readonly kind: "parts"; readonly parts: ReadonlyMap<string, string> }
  | { readonly kind: "broken"; readonly why: string }
  | { readonly kind: "too-big"; readonly why: string };

/** Unpacks a workbook's XML within bounds: the sizes the archive declares are summed before anything is unpacked. */
export function lookIntoZip(bytes: Uint8Array): ZipLook {
  let total = 0;
  try {
    const files = unzipSync(bytes, {
      filter(file) {
        total += file.originalSize;
        return total <= MAX_UNPACKED_BYTES && /\.(?:xml|rels)$/i.test(file.name);
      },
    });
    if (total > MAX_UNPACKED_BYTES)
      return {
        kind: "too-big",
        why: `wanted at most ${megabytes(MAX_UNPACKED_BYTES)} unpacked, got ${megabytes(total)}; save only the survey's sheet to a file of its own`,
      };
    return {
      kind: "parts",
      parts: new Map(Object.entries(files).map(([name, content]) => [name, new TextDecoder().decode(content)])),
    };
  } catch (error) {
    return { kind: "broken", why: (error as Error).message };
  }
}
