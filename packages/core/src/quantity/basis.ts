/** How a figure is known. `measured`: read with an instrument; `marked`: read off a label or print; `typical`: a class figure; `assumed`: nobody looked. */
export const BASES = ["measured", "marked", "typical", "assumed"] as const;
export type Basis = (typeof BASES)[number];

/** How a published figure came to us: `seen` in a text that was opened, `computed` from a seen formula, or from `memory`. */
export const HOWS = ["seen", "computed", "memory"] as const;
export type How = (typeof HOWS)[number];
