/** A place where a line may break though there is no space: a noncharacter, which no text may hold. The markup turns it into nothing. */
export const BREAK_POINT = "\u{FDD0}";

/** A run this long may be wider than a narrow column. */
const LONG_RUN = /[^\s]{22,}/gu;
const EVERY = 6;

/** The text with break points inside every long run; the characters stay as they are. */
export const withBreakPoints = (text: string): string =>
  text.replace(LONG_RUN, (run) =>
    [...new Intl.Segmenter("en", { granularity: "grapheme" }).segment(run)]
      .map(({ segment }, i) => (i > 0 && i % EVERY === 0 ? BREAK_POINT + segment : segment))
      .join(""),
  );
