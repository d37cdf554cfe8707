/** Ink on drafting film, in print: every meaning has a pattern as well as a colour, so that a black-only print says the same. */
export const INK = "#1a2129";
export const SOFT = "#454d56";
export const RULE = "#a59d88";
export const WASH = "#f4f1e8";
export const COPPER = "#a8501c";
export const SHEET = "#ffffff";

/** How much room a figure leaves to its limit. `ample` solid, `tight` hatched, `fails` doubled, `open` dotted, `spare` thin dashes. */
export type Margin = "ample" | "tight" | "fails" | "open" | "spare";

export const MARGIN_COLOUR: Readonly<Record<Margin, string>> = {
  ample: "#2c6a58",
  tight: "#8a5d00",
  fails: "#a01f2a",
  open: "#454d56",
  spare: RULE,
};

/** Family of the lettering; the page setter puts other scripts in a face that has them. */
export const FACE = "Atkinson Hyperlegible Next";
