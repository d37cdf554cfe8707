import { describe, expect, it } from "vitest";
import { type CoachRecord, indexRecord } from "../../record/index.js";
import { evidenceOfKind } from "./evidence-of-kind.js";

const record = (bank: object | undefined, modules: object[]) =>
  indexRecord({
    format: "fusebook/1",
    id: "r",
    coach: { name: "c" },
    moduleKinds: [{ id: "k", name: "kind", channels: 8, ...(bank && { bank }) }],
    modules: modules.map((each) => ({ kind: "k", ...each })),
  } as unknown as CoachRecord);

const modules = [
  { id: "m1", answersTo: 1, positionsFound: "010000" },
  { id: "m2", address: 2, positionsFound: "110000" },
  { id: "m3", address: 3 },
  { id: "m4", answersTo: 4, positionsFound: "01?000" },
  { id: "m5" },
  { id: "m6", kind: "other", answersTo: 9, positionsFound: "111111" },
];
const bank = {
  switches: 6,
  options: [{ enables: [], set: [{ switch: 5, position: 0 }] }],
  unused: [{ switch: 6, position: 0 }],
};

describe("evidenceOfKind", () => {
  it("takes as samples only what was seen to answer, and leaves option and unused switches out", () => {
    expect(evidenceOfKind(record(bank, modules), "k")).toEqual({
      kind: "known",
      value: {
        samples: [{ name: "m1", address: 1, positions: "010000" }],
        options: {
          switches: 6,
          notCounted: [5, 6],
          installed: [
            { name: "m2", positions: "110000" },
            { name: "m3", address: 3 },
            { name: "m4", address: 4, positions: "01?000" },
          ],
        },
        addressNotSeen: ["m2", "m3"],
      },
    });
  });

  it("takes the program's address where told to", () => {
    const got = evidenceOfKind(record(bank, modules), "k", true);
    expect(got.kind === "known" && got.value.samples.map((each) => each.name)).toEqual(["m1", "m2"]);
  });

  it("counts the switches of the rows where the kind says nothing, and asks where no row was read", () => {
    const got = evidenceOfKind(record(undefined, modules), "k");
    expect(got.kind === "known" && got.value.options.switches).toBe(6);
    expect(evidenceOfKind(record(undefined, [{ id: "m1" }]), "k")).toEqual({
      kind: "missing",
      needs: ["bank.switches"],
    });
  });
});
