import { describe, expect, it } from "vitest";
import { fieldWords } from "./field-words.js";

describe("what a record field is called", () => {
  it("is its trade word, whatever the list it stands in", () => {
    expect(fieldWords("circuits[3].out.lengthM")).toBe("the length of the wire");
    expect(fieldWords("moduleKinds[1].onResistanceOhm")).toContain("one channel switched on");
  });
  it("is the column as typed for a survey cell that could not be read", () => {
    expect(fieldWords("circuits[4].unread.Insulation C")).toContain('"Insulation C"');
    expect(fieldWords("survey.unread[2]")).toBe("what the survey cell was meant to say");
  });
  it("is the path itself where we have no word", () => {
    expect(fieldWords("coach.zzz")).toBe("coach.zzz");
  });
});
