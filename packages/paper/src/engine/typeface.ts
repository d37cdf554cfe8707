/** What is needed of a typeface file to measure text and to know which characters it can draw. */
export interface Typeface {
  /** Whether the face has a glyph for a code point. */
  has(codePoint: number): boolean;
  /** Advance width over the type size, or undefined where there is no glyph. */
  advance(codePoint: number): number | undefined;
}

/**
 * Reads the character map and advance widths of a TrueType file (tables cmap formats 4 and 12, hhea, hmtx, head; OpenType specification 1.9).
 * Throws where the file is not one: typefaces are ours, not the user's.
 */
export function readTypeface(bytes: Uint8Array): Typeface {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const table = tableOffsets(view);
  const at = (tag: string): number => {
    const offset = table.get(tag);
    if (offset === undefined) throw new Error(`typeface: table ${tag} is missing [typeface-table]`);
    return offset;
  };
  const unitsPerEm = view.getUint16(at("head") + 18);
  const longMetrics = view.getUint16(at("hhea") + 34);
  const hmtx = at("hmtx");
  const glyphs = readCmap(view, at("cmap"));
  return {
    has: (codePoint) => glyphs.has(codePoint),
    advance(codePoint) {
      const glyph = glyphs.get(codePoint);
      if (glyph === undefined) return undefined;
      return view.getUint16(hmtx + 4 * Math.min(glyph, longMetrics - 1)) / unitsPerEm;
    },
  };
}

function tableOffsets(view: DataView): Map<string, number> {
  const tables = new Map<string, number>();
  for (let i = 0; i < view.getUint16(4); i++) {
    const entry = 12 + 16 * i;
    const tag = String.fromCharCode(...[0, 1, 2, 3].map((k) => view.getUint8(entry + k)));
    tables.set(tag, view.getUint32(entry + 8));
  }
  return tables;
}

function readCmap(view: DataView, cmap: number): Map<number, number> {
  const glyphs = new Map<number, number>();
  for (let i = 0; i < view.getUint16(cmap + 2); i++) {
    const subtable = cmap + view.getUint32(cmap + 4 + 8 * i + 4);
    const format = view.getUint16(subtable);
    if (format === 4) readFormat4(view, subtable, glyphs);
    if (format === 12) readFormat12(view, subtable, glyphs);
  }
  return glyphs;
}

function readFormat4(view: DataView, at: number, glyphs: Map<number, number>): void {
  const segments = view.getUint16(at + 6) / 2;
  const ends = at + 14;
  const starts = ends + 2 * segments + 2;
  const deltas = starts + 2 * segments;
  const ranges = deltas + 2 * segments;
  for (let s = 0; s < segments; s++) {
    const end = view.getUint16(ends + 2 * s);
    const start = view.getUint16(starts + 2 * s);
    const range = view.getUint16(ranges + 2 * s);
    for (let code = start; code <= end && code !== 0xffff; code++) {
      const raw = range === 0 ? code : view.getUint16(ranges + 2 * s + range + 2 * (code - start));
      if (range !== 0 && raw === 0) continue;
      const glyph = (raw + view.getUint16(deltas + 2 * s)) & 0xffff;
      if (glyph !== 0) glyphs.set(code, glyph);
    }
  }
}

function readFormat12(view: DataView, at: number, glyphs: Map<number, number>): void {
  for (let g = 0; g < view.getUint32(at + 12); g++) {
    const group = at + 16 + 12 * g;
    const start = view.getUint32(group);
    const glyph = view.getUint32(group + 8);
    for (let code = start; code <= view.getUint32(group + 4); code++) glyphs.set(code, glyph + code - start);
  }
}
