export { cheapestRelease, type Release, type ReleaseTier } from "./cheapest-release.js";
export {
  boundsUnder,
  type ConflictGroup,
  type GroupedMilp,
  type GroupNature,
  groupedByRows,
} from "./conflict-group.js";
export { type GroupTester, groupTester, type StopRule, type Tested } from "./group-tester.js";
export { type Conflict, smallestConflict, smallestOfOrders } from "./smallest-conflict.js";
