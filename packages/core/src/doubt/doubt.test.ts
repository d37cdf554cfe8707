import { describe, expect, it } from "vitest";
import { checkRecord } from "../findings/index.js";
import { indexRecord } from "../record/index.js";
import type { FindingDoubt } from "./doubt.js";
import { doubtOf } from "./doubt-of.js";
import { fieldAt, withField } from "./field-path.js";
import { doubtAndNext, readNext } from "./read-next.js";
import { readAs } from "./readable.js";
import { lampCoach, read } from "./test-lamp.js";

const dropOf = (index: ReturnType<typeof lampCoach>): FindingDoubt | undefined =>
  doubtOf(index, { seed: 1, samples: 300 }).find(
    (one): one is FindingDoubt => one.kind === "compared" && one.finding.code === "drop-over-limit",
  );

describe("doubt", () => {
  it("says the same for the same seed, and a little else for another", () => {
    const at = (seed: number) => doubtOf(lampCoach(), { seed, samples: 200 });
    expect(at(5)).toEqual(at(5));
    expect(at(5)).not.toEqual(at(6));
  });

  it("has nothing to say of a verdict that is not open", () => {
    expect(dropOf(lampCoach({ out: { resistanceOhm: read(0.05, 0.01) } }))).toBeUndefined();
  });

  it("advises the figure that makes the width, not the one that takes least time", () => {
    const both = lampCoach({ out: { resistanceOhm: read(0.24, 0.08) }, load: { currentA: read(5, 0.2) } });
    expect(dropOf(both)?.readings[0]?.path).toBe("circuits[0].out.resistanceOhm");
    const draw = lampCoach({ out: { resistanceOhm: read(0.24, 0.015) }, load: { currentA: read(5, 2) } });
    expect(dropOf(draw)?.readings[0]?.path).toBe("loads[0].currentA");
  });

  it("counts the minutes of the place that the reading is at", () => {
    const places = [
      { id: "p1", name: "Under the bed", accessMin: 12, within: "p2" },
      { id: "p2", name: "Berth", accessMin: 1 },
    ];
    const reading = dropOf(lampCoach({ places, out: { place: "p1" } }))?.readings[0];
    expect(reading).toMatchObject({ place: "p1", accessMin: 13, readMin: 5, minutes: 18 });
  });

  it("does not advise an instrument coarser than what is known", () => {
    // 0.24 ohm known to 0.001: the ohmmeter would leave 0.013 either way.
    const fine = lampCoach({ out: { resistanceOhm: read(0.24, 0.001) } });
    expect(dropOf(fine)).toMatchObject({ readings: [], outlook: "nothing" });
  });

  it("settles: the proposed reading entered, checkRecord no longer calls it open", () => {
    const coach = lampCoach();
    const reading = dropOf(coach)!.readings[0]!;
    const verdictAt = (ohm: number) =>
      checkRecord(indexRecord(withField(coach.record, reading.path, readAs(reading.instrument, ohm))), {
        includeHolds: true,
      }).find(({ code }) => code === "drop-over-limit")?.verdict;
    // 5 A through the wire against 1.2 V: 0.24 ohm, known to 5 % and a milliohm.
    expect([0.17, 0.22, 0.24, 0.26, 0.31].map(verdictAt)).toEqual(["holds", "holds", "open", "fails", "fails"]);
  });

  it("looks at a fuse that nobody has read, over the sizes that exist", () => {
    const guessed = lampCoach({ fuse: { ratedA: { value: 5, basis: "assumed" }, type: "blade" } });
    const doubt = doubtOf(guessed, { seed: 1 }).find(({ finding }) => finding.code === "load-over-fuse");
    // 2.5 to 7.5 A: 3, 4 A fail; 5, 7.5 A carry 5 A.
    const [reading] = doubt?.readings ?? [];
    expect(reading).toMatchObject({ path: "circuits[0].fuse.ratedA", instrument: "look" });
    expect((reading as { printed?: unknown }).printed).toEqual([3, 4, 5, 7.5]);
    expect(reading).toMatchObject({ chanceSettles: 1, chanceHolds: 0.5, chanceFails: 0.5 });
  });

  it("adds up one reading over all the verdicts that it serves", () => {
    const coach = lampCoach({ load: { minV: 10.8 } });
    const { doubts, next } = doubtAndNext(coach, { seed: 1, samples: 200 });
    const open = doubts.filter((one) => one.kind === "compared");
    expect(open.map(({ finding }) => finding.code)).toEqual(["drop-over-limit", "voltage-under-minimum"]);
    expect(next[0]?.path).toBe("circuits[0].out.resistanceOhm");
    expect(next[0]?.verdicts).toHaveLength(2);
    const settles = (open as FindingDoubt[]).map(({ readings }) => readings[0]!.chanceSettles);
    expect(next[0]?.settles).toBeCloseTo(settles[0]! + settles[1]!, 9);
    expect(readNext(coach, { seed: 1, samples: 200 })).toEqual(next);
  });

  it("tells only of what was asked about: a module brings its circuits, a circuit its loads", () => {
    const about = (...only: string[]) => doubtOf(lampCoach(), { seed: 1, samples: 50, only }).map((one) => one.key);
    expect(about("l1")).toContain("drop-over-limit loads[0]");
    expect(about("m1")).toEqual(expect.arrayContaining(about("c1")));
    expect(about("s1")).not.toContain("drop-over-limit loads[0]");
  });
});

describe("a field by its path", () => {
  it("is set in a copy, the way to it made where it is not there, the rest shared", () => {
    const { record } = lampCoach();
    const changed = withField(record, "circuits[0].connectors[1].resistanceOhm", 0.01);
    expect(fieldAt(changed, "circuits[0].connectors[1].resistanceOhm")).toBe(0.01);
    expect(fieldAt(record, "circuits[0].connectors")).toBeUndefined();
    expect(changed.loads).toBe(record.loads);
  });
});
