import { unzipSync } from "fflate";
import { MAX_UNPACKED_BYTES, megabytes } from "./bounds.js";
import { crc32, keptSums } from "./check-sum.js";

/** The XML parts of a workbook by path, or why they cannot be had. */
export type ZipLook =
  | { readonly kind: "parts"; readonly parts: ReadonlyMap<string, string>; readonly names: readonly string[] }
  | { readonly kind: "broken"; readonly why: string }
  | { readonly kind: "too-big"; readonly why: string };

const WANTED =
  /^(?:xl\/(?:workbook\.xml|_rels\/workbook\.xml\.rels|sharedStrings\.xml|styles\.xml|worksheets\/[^/]+\.xml))$/i;
/** No honest sheet packs tighter than this; a few thousand to one is a file made to fill the memory. */
const MAX_RATIO = 400;

/**
 * Unpacks the parts of a workbook that a table needs, within bounds: the sizes that the archive declares are summed before anything is unpacked,
 * and a part is unpacked into no more room than it declares.
 */
export function lookIntoZip(bytes: Uint8Array): ZipLook {
  let total = 0;
  const names: string[] = [];
  try {
    const files = unzipSync(bytes, {
      filter(file) {
        names.push(file.name);
        if (!WANTED.test(file.name)) return false;
        total +=
          file.originalSize > file.size * MAX_RATIO + 1_000_000
            ? MAX_UNPACKED_BYTES + file.originalSize
            : file.originalSize;
        return total <= MAX_UNPACKED_BYTES;
      },
    });
    if (total > MAX_UNPACKED_BYTES)
      return {
        kind: "too-big",
        why: `wanted at most ${megabytes(MAX_UNPACKED_BYTES)} unpacked, got more; save only the survey's sheet to a file of its own, or save it as CSV`,
      };
    // The unpacker does not compare check sums; a figure with one wrong bit would be read as another figure.
    const sums = keptSums(bytes);
    for (const [name, content] of Object.entries(files)) {
      const kept = sums.get(name);
      if (kept !== undefined && kept !== crc32(content))
        return { kind: "broken", why: `${name} does not match its check sum` };
    }
    const parts = new Map(
      Object.entries(files).map(([name, content]) => [name.toLowerCase(), new TextDecoder().decode(content)]),
    );
    return { kind: "parts", parts, names };
  } catch (error) {
    return { kind: "broken", why: (error as Error).message };
  }
}
