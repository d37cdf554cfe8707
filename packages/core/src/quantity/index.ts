export { BASES, type Basis, HOWS, type How } from "./basis.js";
export { type Figure, figureBasis, figureValue } from "./figure.js";
export { Invariant } from "./invariant.js";
export { known, missing, type Outcome, refused } from "./outcome.js";
export { COMMON_PRACTICE, type Source } from "./source.js";
export type { Span } from "./span.js";
