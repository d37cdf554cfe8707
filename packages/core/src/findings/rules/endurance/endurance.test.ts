import { generateCoach } from "@fusebook/fixtures";
import { describe, expect, it } from "vitest";
import { type CoachRecord, indexRecord, type Supply } from "../../../record/index.js";
import { checkRecord } from "../../check-record.js";
import type { FindingCode } from "../../codes.js";

const coach = (): CoachRecord => structuredClone(generateCoach({ seed: 4, circuits: 12 }).record) as CoachRecord;
const bank = (record: CoachRecord): Supply => record.supplies!.find((supply) => supply.kind === "battery")!;
const found = (record: CoachRecord, code: FindingCode) =>
  checkRecord(indexRecord(record), { includeHolds: true })
    .filter((finding) => finding.code === code)
    .map(({ verdict, severity, subject }) => `${verdict} ${severity} ${subject.path}`);
const at = (record: CoachRecord) => `supplies[${record.supplies!.indexOf(bank(record))}]`;

describe("battery figures", () => {
  it("a capacity that is not on record is asked for", () => {
    const record = coach();
    expect(found(record, "battery-figures-missing")).toEqual([`holds note ${at(record)}`]);
    delete bank(record).capacityAh;
    expect(found(record, "battery-figures-missing")).toEqual([`open note ${at(record)}`]);
  });

  it("an exponent below 1 and a charge above 1 fail, by field", () => {
    const record = coach();
    bank(record).peukertExponent = 0.8;
    bank(record).chargeRatio = 90;
    expect(found(record, "battery-figure-impossible")).toEqual([
      `fails mend ${at(record)}.chargeRatio`,
      `fails mend ${at(record)}.peukertExponent`,
    ]);
  });

  it("an exponent that is not on record is open; lithium's stand-in rests on memory", () => {
    const record = coach();
    expect(found(record, "exponent-assumed")).toEqual([`holds note ${at(record)}`]);
    delete bank(record).peukertExponent;
    bank(record).chemistry = "lifepo4";
    const [finding] = checkRecord(indexRecord(record)).filter((one) => one.code === "exponent-assumed");
    expect(finding).toMatchObject({ verdict: "open", source: { how: "memory" } });
  });
});

describe("flat in storage", () => {
  it("holds, is open or fails against the days of the policy; never a stop, since it rests on memory", () => {
    for (const [storedDays, verdict] of [
      [1, "holds"],
      [40, "open"],
      [2000, "fails"],
    ] as const) {
      const record = coach();
      record.policy = { ...record.policy, storedDays };
      expect(found(record, "flat-in-storage")).toEqual([`${verdict} watch coach`]);
    }
  });

  it("a detector whose draw is not known never lets it hold", () => {
    const record = coach();
    record.policy = { ...record.policy, storedDays: 1 };
    const detector = record.loads!.find((load) => load.class === "detector")!;
    delete detector.currentA;
    delete detector.powerW;
    expect(found(record, "flat-in-storage")).toEqual(["open watch coach"]);
  });
});

describe("hours that the owner asks for", () => {
  it("nothing is said where nothing is asked", () => {
    expect(found(coach(), "hours-below-wanted")).toEqual([]);
  });

  it("holds, is open or fails by the whole span", () => {
    for (const [hours, verdict] of [
      [0.2, "holds"],
      [2000, "fails"],
    ] as const) {
      const record = coach();
      record.endurance = { wanted: [{ profile: "evening", hours }] };
      expect(found(record, "hours-below-wanted")).toEqual([`${verdict} watch endurance.wanted[0]`]);
    }
  });

  it("a battery of unknown capacity leaves it open and asks for the capacity", () => {
    const record = coach();
    record.endurance = { wanted: [{ profile: "evening", hours: 4 }] };
    delete bank(record).capacityAh;
    const [finding] = checkRecord(indexRecord(record)).filter((one) => one.code === "hours-below-wanted");
    expect(finding?.settledBy.map((one) => one.path)).toEqual([`${at(record)}.capacityAh`]);
  });
});

describe("profiles on the record", () => {
  it("an empty one, one that names what is not there, and a wish for one that is not there fail by path", () => {
    const record = coach();
    record.endurance = {
      profiles: [
        { id: "a", spans: [] },
        { id: "b", spans: [{ hours: 1, on: [{ circuits: ["c9.99" as never] }] }] },
        { id: "c", spans: [{ hours: 1, on: [] }] },
      ],
      wanted: [{ profile: "d", hours: 1 }],
    };
    expect(found(record, "profile-faulty")).toEqual([
      "fails mend endurance.profiles[0]",
      "fails mend endurance.profiles[1]",
      "fails mend endurance.wanted[0]",
      "holds mend endurance.profiles[2]",
    ]);
  });
});
