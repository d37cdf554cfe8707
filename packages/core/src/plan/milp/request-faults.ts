import type { Milp } from "./milp.js";
import type { MilpFault } from "./milp-faults.js";
import type { BoundChange, MilpRequest } from "./milp-solver.js";

/** Every fault of what a solve is asked to change: places that are not there, lists of the wrong length, ends that cross. Empty = readable. */
export function requestFaults(milp: Milp, request: MilpRequest): MilpFault[] {
  const faults: MilpFault[] = [];
  const say = (code: MilpFault["code"], path: string, message: string) => faults.push({ code, path, message });
  const list = (path: "costs" | "start", values: readonly number[] | undefined) => {
    if (values === undefined) return;
    if (values.length !== milp.columns.length)
      say(
        "wrong-length",
        path,
        `wants one number for each of the ${milp.columns.length} columns, got ${values.length}`,
      );
    values.forEach((value, at) => {
      if (!Number.isFinite(value)) say("not-a-number", `${path}[${at}]`, `wants a number, got ${value}`);
    });
  };
  const bounds = (path: "rowBounds" | "columnBounds", changes: readonly BoundChange[] = []) => {
    const kind = path === "rowBounds" ? "rows" : "columns";
    changes.forEach(({ at, lower, upper }, index) => {
      const where = `${path}[${index}]`;
      if (milp[kind][at] === undefined)
        say(kind === "rows" ? "no-such-row" : "no-such-column", where, `there is no place ${at} among the ${kind}`);
      if (Number.isNaN(lower) || Number.isNaN(upper) || lower === Infinity || upper === -Infinity)
        say("not-a-number", where, `wants numbers, got ${lower} to ${upper}`);
      else if (lower > upper) say("ends-crossed", where, `${lower} to ${upper} holds nothing`);
    });
  };
  list("costs", request.costs);
  list("start", request.start);
  bounds("rowBounds", request.rowBounds);
  bounds("columnBounds", request.columnBounds);
  if (request.timeS !== undefined && !(request.timeS > 0))
    say("not-a-number", "timeS", `wants seconds above zero, got ${request.timeS}`);
  return faults;
}
