import { readFileSync } from "node:fs";
import { enduranceOf } from "@fusebook/core/endurance";
import { type CoachRecord, indexRecord } from "@fusebook/core/record";
import { expect, it } from "vitest";

const exact = (value: number) => ({ value, basis: "measured", plusMinus: 0 });

/** The coach of the worked example in docs/method/endurance.md. */
const coach = {
  format: "fusebook/1",
  id: "example",
  coach: { name: "Example", nominalV: 12, isInvented: true },
  supplies: [
    {
      id: "s-1",
      kind: "battery",
      name: "Bank",
      node: "n-plus",
      returnNode: "n-minus",
      capacityAh: exact(100),
      ratedHours: 20,
      peukertExponent: exact(1.2),
      chargeRatio: exact(1),
      temperatureC: exact(25),
      selfDischargePerMonthRatio: exact(0),
      internalResistanceOhm: exact(0.02),
      openCircuitCurve: [
        { chargeRatio: 0, openCircuitV: 12 },
        { chargeRatio: 1, openCircuitV: 12 },
      ],
    },
  ],
  nodes: [
    { id: "n-plus", kind: "busbar", name: "Positive", rail: "positive" },
    { id: "n-minus", kind: "busbar", name: "Negative", rail: "return" },
  ],
  circuits: [
    {
      id: "c-1",
      fusePosition: { node: "n-plus", name: "F1" },
      out: { resistanceOhm: exact(0.01) },
      return: { resistanceOhm: exact(0.01), node: "n-minus" },
      loads: ["l-1"],
    },
  ],
  loads: [{ id: "l-1", name: "Outlet", class: "outlet", ratedV: 12, currentA: exact(10) }],
} as unknown as CoachRecord;

it("the worked example of docs/method/endurance.md comes out as the page says, line by line", () => {
  const page = readFileSync(new URL("../docs/method/endurance.md", import.meta.url), "utf8");
  const rows = [...page.matchAll(/^\| (all the time|half of the time|four tenths) \| (\d+) A \| ([\d.]+) \|/gm)];
  expect(rows.map((row) => row[1])).toEqual(["all the time", "half of the time", "four tenths"]);
  const shares = [1, 0.5, 0.4];
  rows.forEach(([, , meanA, hours], i) => {
    const profile = {
      id: "example",
      spans: [{ hours: 1, on: [{ circuits: ["c-1" as never], shareRatio: shares[i] }] }],
    };
    const found = enduranceOf(indexRecord(coach), profile, { reserveRatio: 0.5 });
    if (found.kind !== "known") throw new Error(JSON.stringify(found));
    const [first] = found.value.banks[0]!.points;
    expect(first!.currentA).toBeCloseTo(Number(meanA), 6);
    expect(Math.abs(found.value.hours.nominal - Number(hours))).toBeLessThan(0.0006);
    if (i === 0) expect(first!.terminalV).toBeCloseTo(11.8, 9);
  });
});
