export {
  type Balance,
  type CoachSolution,
  type CoachSpans,
  DROP_PLACES,
  type DropPart,
  type DropPlace,
  type LoadResult,
  type SpanMethod,
  type Spanned,
  type SpannedLoad,
} from "./results.js";
export type { CoachState } from "./state.js";
