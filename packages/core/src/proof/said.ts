const YES: ReadonlySet<string> = new Set(["yes", "y", "ok", "okay", "works", "good", "pass", "true"]);
const NO: ReadonlySet<string> = new Set(["no", "n", "fails", "fail", "dead", "does not work", "bad", "false"]);

/** What a person meant by a word on the test sheet: `yes`, `no`, or undefined where it is neither. */
export function saidMeans(said: string): "yes" | "no" | undefined {
  const word = said
    .trim()
    .toLowerCase()
    .replace(/[.!\s]+$/, "");
  if (YES.has(word)) return "yes";
  return NO.has(word) ? "no" : undefined;
}
