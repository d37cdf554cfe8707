/** Words that an LP file reads as its own. */
const LP_WORDS = new Set(
  (
    "min minimize minimise minimum max maximize maximise maximum subject such st bound bounds gen general generals int integer integers " +
    "bin binary binaries free inf infinity infty end sos sos1 sos2 semi semis sec sections rows columns rhs ranges name endata objsense obj"
  ).split(" "),
);

/** Beginnings that some readers take for a number: an exponent, and what the C library reads as infinite or as no number ("Infrared" too). */
const NUMBER_LIKE = /^(?:e[0-9.]|e$|inf|nan)/i;

/** Longest name written: well under what the file formats' readers take. */
const MOST_SIGNS = 100;

/** Names that LP and free MPS readers take: letters, digits, `_` and `.`; never a number, an exponent or a word of the format; each once. */
export function fileNames(names: readonly string[]): string[] {
  const taken = new Set<string>();
  return names.map((name) => {
    const plain = name.replace(/[^A-Za-z0-9_.]/g, "_").slice(0, MOST_SIGNS);
    const isOdd = !/^[A-Za-z_]/.test(plain) || NUMBER_LIKE.test(plain) || LP_WORDS.has(plain.toLowerCase());
    const base = isOdd ? `n_${plain}` : plain;
    let unused = base;
    for (let count = 2; taken.has(unused); count += 1) unused = `${base}_${count}`;
    taken.add(unused);
    return unused;
  });
}

/** Names of eight signs for fixed MPS: a letter and the place. */
export const shortNames = (letter: "C" | "R", count: number): string[] =>
  Array.from({ length: count }, (_, at) => `${letter}${String(at + 1).padStart(7, "0")}`);

/** One comment line for each name that a file could not carry as it is. */
export const renamedLines = (mark: string, names: readonly string[], written: readonly string[]): string[] =>
  names.flatMap((name, at) =>
    name === written[at] ? [] : `${mark} ${written[at]} = ${name.replace(/\s+/g, " ").slice(0, 300)}`,
  );
