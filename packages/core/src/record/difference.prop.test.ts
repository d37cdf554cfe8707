import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { applyDifference, type CoachRecord, differenceOf } from "./index.js";

const record = (fields: Record<string, unknown>): CoachRecord =>
  ({ format: "fusebook/1", id: "x", coach: { name: "x" }, ...fields }) as unknown as CoachRecord;

const name = fc.oneof(fc.constantFrom("a", "b", "__proto__", "value", "loads"), fc.string({ maxLength: 3 }));
const field = fc.letrec((tie) => ({
  value: fc.oneof(
    { depthSize: "small" },
    fc.constantFrom<unknown>(null, 0, 1, true, "t", ""),
    fc.array(tie("value"), { maxLength: 3 }),
    fc.dictionary(name, tie("value"), { maxKeys: 3 }),
  ),
})).value;
const thing = (id: string) => fc.dictionary(name, field, { maxKeys: 4 }).map((fields) => ({ ...fields, id }));
const things = fc
  .shuffledSubarray(["c1", "c2", "c3", "c4", "c5", "c6"])
  .chain((ids) => fc.tuple(...ids.map((id) => thing(id))));
const anyRecord = fc
  .record(
    {
      circuits: fc.oneof(things, fc.array(field, { maxLength: 3 })),
      loads: things,
      coach: field,
      extra: field,
      survey: field,
    },
    { requiredKeys: [] },
  )
  .map(record);

describe("the difference of two records", () => {
  it("applied to the first gives the second, whatever they hold", () => {
    fc.assert(
      fc.property(anyRecord, anyRecord, (before, after) => {
        const copy = JSON.stringify(before);
        expect(applyDifference(before, differenceOf(before, after))).toEqual(after);
        expect(JSON.stringify(before)).toBe(copy);
      }),
      { seed: 11, numRuns: 1_500 },
    );
  });

  it("is empty for a record and its copy", () => {
    fc.assert(
      fc.property(anyRecord, (before) => {
        expect(differenceOf(before, structuredClone(before))).toEqual([]);
      }),
      { seed: 12, numRuns: 500 },
    );
  });

  it("tells by id what was added, removed, moved and changed, with field paths", () => {
    const before = record({
      circuits: [{ id: "c1", fuse: { ratedA: 10 } }, { id: "c2" }, { id: "c3", label: "OLD" }, { id: "c4" }],
    });
    const after = record({
      circuits: [{ id: "c4" }, { id: "c1", fuse: { ratedA: 15 } }, { id: "c3" }, { id: "c5", label: "NEW" }],
    });
    expect(differenceOf(before, after)).toEqual([
      { kind: "removed", collection: "circuits", id: "c2", index: 1, item: { id: "c2" } },
      { kind: "moved", collection: "circuits", id: "c4", from: 3, to: 0 },
      { kind: "added", collection: "circuits", id: "c5", index: 3, item: { id: "c5", label: "NEW" } },
      { kind: "changed", collection: "circuits", id: "c1", path: ["fuse", "ratedA"], before: 10, after: 15 },
      { kind: "changed", collection: "circuits", id: "c3", path: ["label"], before: "OLD", after: undefined },
    ]);
  });

  it("moves no more things than it must: one thing put last is one move", () => {
    const ids = Array.from({ length: 50 }, (_, i) => ({ id: `l${i}` }));
    const changes = differenceOf(record({ loads: ids }), record({ loads: [...ids.slice(1), ids[0]] }));
    expect(changes).toEqual([{ kind: "moved", collection: "loads", id: "l0", from: 0, to: 49 }]);
  });

  it("compares lists whose ids are not distinct as plain fields, and still arrives", () => {
    const before = record({
      loads: [
        { id: "l1", name: "a" },
        { id: "l1", name: "b" },
      ],
    });
    const after = record({
      loads: [
        { id: "l1", name: "a" },
        { id: "l1", name: "c" },
      ],
    });
    expect(differenceOf(before, after)).toEqual([
      { kind: "changed", path: ["loads", 1, "name"], before: "b", after: "c" },
    ]);
  });
});
