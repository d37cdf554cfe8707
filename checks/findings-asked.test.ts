import { checkRecord, contextOf } from "@fusebook/core/findings";
import { type CoachRecord, indexRecord } from "@fusebook/core/record";
import { demoRecord } from "@fusebook/fixtures";
import fc from "fast-check";
import { expect, it } from "vitest";

type Path = (string | number)[];

/** Every field of supplies, cables, modules, circuits and loads that an engine may want, by its place in the record. */
function fieldsOf(record: CoachRecord): Path[] {
  const found: Path[] = [];
  const put = (value: unknown, path: Path): void => {
    if (typeof value !== "object" || value === null || Array.isArray(value) || "basis" in value) return;
    for (const [name, field] of Object.entries(value)) {
      if (["id", "from", "to", "name", "label", "kind", "isolation", "quantity"].includes(name)) continue;
      found.push([...path, name]);
      put(field, [...path, name]);
    }
  };
  for (const collection of ["supplies", "cables", "modules", "circuits", "loads"] as const)
    (record[collection] ?? []).forEach((item, i) => void put(item, [collection, i]));
  return found;
}

function without(record: CoachRecord, paths: readonly Path[]): CoachRecord {
  const copy = structuredClone(record);
  for (const path of paths) {
    let at: unknown = copy;
    for (const key of path.slice(0, -1)) at = (at as Record<string | number, unknown> | undefined)?.[key];
    if (at !== undefined) delete (at as Record<string | number, unknown>)[path.at(-1)!];
  }
  return copy;
}

it("whatever the network lacks, some finding asks for: missing is never read as good", () => {
  const whole = demoRecord();
  const fields = fieldsOf(whole);
  fc.assert(
    fc.property(fc.subarray(fields, { minLength: 1, maxLength: 12 }), (gone) => {
      const index = indexRecord(without(whole, gone));
      const context = contextOf(index);
      const solved = context.inState(context.allOnState());
      const lacks =
        solved.kind === "known" ? solved.value.nominal.leftOut : solved.kind === "missing" ? solved.needs : [];
      const asked = checkRecord(index, { context }).flatMap((finding) => finding.settledBy.map(({ path }) => path));
      // Of a fuse that feeds nobody knows what, the loads are asked for first.
      const isAsked = (need: string) =>
        asked.includes(`${need.split(".")[0]}.loads`) ||
        asked.some((path) => path === need || path.startsWith(`${need}.`) || need.startsWith(`${path}.`));
      expect(lacks.filter((need) => !isAsked(need))).toEqual([]);
    }),
    { seed: 20260725, numRuns: 30, endOnFailure: true },
  );
});
