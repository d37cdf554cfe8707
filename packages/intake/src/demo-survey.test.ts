import { type CoachRecord, importSurvey, proposeMapping } from "@fusebook/core/record";
import {
  demoAfterwards,
  demoBaseRecord,
  demoRecord,
  demoSurveyCsv,
  demoSurveyXlsx,
  withAfterwards,
} from "@fusebook/fixtures";
import { describe, expect, it } from "vitest";
import { readGrid } from "./read-grid.js";

const FILES = [
  ["marsh-wren-survey.csv", new TextEncoder().encode(demoSurveyCsv())],
  ["marsh-wren-survey.xlsx", demoSurveyXlsx()],
] as const;

const imported = async (name: string, bytes: Uint8Array, into: CoachRecord) => {
  const outcome = await readGrid(bytes, name);
  if (outcome.kind === "refused") throw new Error(outcome.faults.map((fault) => fault.message).join("; "));
  return importSurvey(into, outcome.grid, proposeMapping(outcome.grid));
};

/** Feet become metres by multiplication; the record was written by hand to four places. */
const rounded = (value: unknown): unknown =>
  typeof value === "number"
    ? Math.round(value * 1e7) / 1e7
    : Array.isArray(value)
      ? value.map(rounded)
      : value !== null && typeof value === "object"
        ? Object.fromEntries(Object.entries(value).map(([key, item]) => [key, rounded(item)]))
        : value;

const byId = (items: readonly { id: string }[] = []) =>
  Object.fromEntries(items.map((item) => [item.id, rounded(item)] as const));

describe.each(FILES)("the demo coach from its base record and %s", (name, bytes) => {
  it("arrives at the demo record: every circuit and load, and all that was there before", async () => {
    const { record } = await imported(name, bytes, demoBaseRecord());
    const got = withAfterwards(record, demoAfterwards());
    const want = demoRecord();
    expect(byId(got.circuits)).toEqual(byId(want.circuits));
    expect(byId(got.loads)).toEqual(byId(want.loads));
    const { circuits: _c, loads: _l, survey: _s, ...rest } = got;
    const { circuits: _wc, loads: _wl, ...wantRest } = want;
    expect(rest).toEqual(wantRest);
  });

  it("needs the facts added afterwards for nothing but what the survey has no column for", async () => {
    const { record } = await imported(name, bytes, demoBaseRecord());
    const fields = new Set(
      [...Object.values(demoAfterwards().loads), ...Object.values(demoAfterwards().circuits)].flatMap(Object.keys),
    );
    expect([...fields].sort()).toEqual(
      "allowsPwm canMove connectors hasOwnSwitch inrushRatio isContinuous isCritical notes reach tail wish wishWeight".split(
        " ",
      ),
    );
    // A wish for one of two loads in one row cannot be typed; every other wish came from the survey.
    const late = Object.entries(demoAfterwards().loads).filter(([, facts]) => "wish" in facts);
    expect(late.map(([id]) => id)).toEqual(["l-bath-ceiling", "l-bath-fan"]);
    expect(record.loads?.filter((load) => load.wish === "must-dim").length).toBe(14);
  });

  it("tells the five cells that it could not read and keeps both title lines", async () => {
    const { report } = await imported(name, bytes, demoBaseRecord());
    expect(report.unread.map(({ row, column, text }) => [row, column, text])).toEqual([
      ["1.04", "Insulation C", "-"],
      ["2.08", "Amps each (clamp)", "??"],
      ["5.04", "Wire", "18 AGW"],
      ["F12", "Insulation C", "n/a"],
      ["F20", "Wire", "12 or 14"],
      ["above the headings", "", "Marsh Wren - circuit list, walked 2 May"],
      ["above the headings", "", "red pen = checked. lengths in feet unless I wrote something else"],
    ]);
  });

  it("changes nothing when it is imported again", async () => {
    const once = await imported(name, bytes, demoBaseRecord());
    const twice = await imported(name, bytes, once.record);
    expect(twice.report.changes).toEqual([]);
    expect(twice.record).toEqual(once.record);
  });
});
