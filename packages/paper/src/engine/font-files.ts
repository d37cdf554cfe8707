/** Names of the typeface families, in the order in which a missing glyph is looked for. */
export const FONT_FAMILIES = ["Atkinson Hyperlegible Next", "DejaVu Sans", "Noto Emoji"] as const;

/** The typeface files shipped in `fonts/`, with their licences beside them. The first three are the text face. */
export const FONT_FILES = [
  "AtkinsonHyperlegibleNext-Regular.ttf",
  "AtkinsonHyperlegibleNext-Bold.ttf",
  "AtkinsonHyperlegibleNext-Italic.ttf",
  "DejaVuSans.ttf",
  "NotoEmoji-Regular.ttf",
] as const;
