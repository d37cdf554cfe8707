import { type MilpRequest, type MilpSession, violationsOf } from "../milp/index.js";
import { boundsUnder, type ConflictGroup, type GroupedMilp } from "./conflict-group.js";

/** Whether some answer keeps all these groups at once; `unknown` where the solver was stopped before it could say. */
export type Tested = "can-be" | "cannot-be" | "unknown";

/** How long and at whose word a test may be stopped. */
export type StopRule = Pick<MilpRequest, "timeS" | "signal">;

/** Asks one open model about sets of its groups. */
export interface GroupTester {
  test(groups: readonly ConflictGroup[]): Promise<Tested>;
  /** Solves so far: what was known from an earlier answer is not asked again. */
  readonly solves: number;
}

/**
 * Tests sets of groups with one session. A set is answered without a solve where an answer found before keeps it, or where a set already known
 * to be impossible is part of it.
 */
export function groupTester(grouped: GroupedMilp, session: MilpSession, stop: StopRule = {}): GroupTester {
  const witnesses: (readonly number[])[] = [];
  const impossible: ReadonlySet<ConflictGroup>[] = [];
  const noCosts = grouped.milp.columns.map(() => 0);
  let solves = 0;
  return {
    get solves() {
      return solves;
    },
    async test(groups) {
      const asked = new Set(groups);
      if (impossible.some((known) => [...known].every((group) => asked.has(group)))) return "cannot-be";
      const { isClash, ...bounds } = boundsUnder(grouped, groups);
      if (isClash) {
        impossible.push(asked);
        return "cannot-be";
      }
      if (witnesses.some((values) => violationsOf(grouped.milp, values, bounds).length === 0)) return "can-be";
      solves++;
      const answer = await session.solve({ ...stop, ...bounds, costs: noCosts });
      if (answer.values !== undefined) {
        witnesses.push(answer.values);
        return "can-be";
      }
      if (answer.status !== "infeasible") return "unknown";
      impossible.push(asked);
      return "cannot-be";
    },
  };
}
