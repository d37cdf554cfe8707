/** A text file's words, and what a person should know of how they were got. */
export interface DecodedText {
  readonly text: string;
  readonly encoding: "utf-8" | "utf-16le" | "utf-16be" | "windows-1252";
  /** True where the encoding was guessed from the bytes and may be wrong. */
  readonly isGuess: boolean;
}

const SAMPLE_BYTES = 4096;

/** UTF-16 without a mark: Latin text has a zero in every other byte. */
function utf16Order(bytes: Uint8Array): "utf-16le" | "utf-16be" | undefined {
  const sample = Math.min(bytes.length, SAMPLE_BYTES) & ~1;
  if (sample < 4) return undefined;
  let even = 0;
  let odd = 0;
  for (let i = 0; i < sample; i += 2) {
    if (bytes[i] === 0) even += 1;
    if (bytes[i + 1] === 0) odd += 1;
  }
  const half = sample / 2;
  if (odd > half * 0.4 && even < half * 0.05) return "utf-16le";
  if (even > half * 0.4 && odd < half * 0.05) return "utf-16be";
  return undefined;
}

/**
 * Decodes a text file: a byte-order mark first, then UTF-16 by its zero bytes, then UTF-8, and where that does not fit Windows-1252, in which every
 * byte is some letter.
 */
export function decodeText(bytes: Uint8Array): DecodedText {
  const as = (encoding: DecodedText["encoding"], from: number, isGuess: boolean): DecodedText => ({
    text: new TextDecoder(encoding).decode(bytes.subarray(from)),
    encoding,
    isGuess,
  });
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return as("utf-16le", 2, false);
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return as("utf-16be", 2, false);
  if (bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf) return as("utf-8", 3, false);
  const order = utf16Order(bytes);
  if (order !== undefined) return as(order, 0, true);
  try {
    return { text: new TextDecoder("utf-8", { fatal: true }).decode(bytes), encoding: "utf-8", isGuess: false };
  } catch {
    return as("windows-1252", 0, true);
  }
}
