import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { faultText, migrate, openRecord, readRecord, writeRecord } from "./index.js";

const kept = () => readFileSync(new URL("../../../../fixtures/formats/fusebook-0.json", import.meta.url), "utf8");
const refusal = (text: string): string[] => {
  const outcome = openRecord(text);
  return outcome.kind === "refused" ? outcome.faults.map(faultText) : [];
};

describe("opening a record file", () => {
  it("refuses a newer format, says so and what to do, and changes nothing in the text", () => {
    const text = '{"format":"fusebook/2","id":"x","coach":{"name":"x"},"novel":1}';
    expect(refusal(text)).toEqual([
      'format: wanted "fusebook/1" or older, got "fusebook/2", written by a newer program; update this program and open the file again (nothing was changed in it) [newer-format]',
    ]);
    expect(readRecord(JSON.parse(text)).kind).toBe("refused");
    expect(migrate(JSON.parse(text))).toEqual({ kind: "newer", format: "fusebook/2" });
  });

  it.each([
    ['{"format": "fusebook/1",\n  "id": "x"\n  "coach": {}}', "line 3, column 3: wanted a comma or }"],
    ['{"a": [1, 2,, 3]}', "line 1, column 13: wanted a value"],
    ['{"a": 1,}', "line 1, column 9: wanted a field name in quotes (no comma before })"],
    ['{"a": "one\ntwo"}', "line 1, column 7: wanted text that ends with a quote on its own line"],
    ["", "line 1, column 1: wanted a value, got the end of the text"],
    ['{"a": 01}', "line 1, column 8: wanted a comma or }"],
    ['{"a": 1} more', "line 1, column 10: wanted nothing more after the document"],
    ["{'a': 1}", "line 1, column 2: wanted a field name in quotes or }"],
    ['{"a" 1}', "line 1, column 6: wanted a colon"],
  ])("names line and column of broken JSON: %s", (text, start) => {
    expect(refusal(text)).toHaveLength(1);
    expect(refusal(text)[0]).toContain(start);
    expect(refusal(text)[0]).toMatch(/; correct the text there, or open the last good copy \[json\]$/);
  });

  it("refuses a document deeper than 100 brackets, broken or not, without running out of stack", () => {
    const deep = `${"[".repeat(200_000)}${"]".repeat(200_000)}`;
    expect(refusal(`{"format":"fusebook/1","id":"x","coach":{"name":"x"},"odd":${deep}}`)[0]).toContain("[too-deep]");
    expect(refusal("[".repeat(200_000))[0]).toContain("[json]");
  });

  it("refuses a text above 32,000,000 characters with what to do", () => {
    expect(refusal(" ".repeat(32_000_001))[0]).toContain("keep photos and files outside the record");
  });

  it("opens a file that starts with a byte-order mark", () => {
    expect(openRecord('\uFEFF{"format":"fusebook/1","id":"x","coach":{"name":"x"}}').kind).toBe("read");
  });

  it("lists every fault of a document: 20 faults, 20 messages by path", () => {
    const loads = Array.from({ length: 20 }, (_, i) => ({ id: `l${i}`, name: "lamp", currentA: "2.5A" }));
    const faults = refusal(JSON.stringify({ format: "fusebook/1", id: "x", coach: { name: "x" }, loads }));
    expect(faults).toHaveLength(20);
    expect(faults[7]).toBe(
      'loads[7].currentA: wanted a number of amps or an object such as { "value": …, "basis": "measured" }, got the text "2.5A"; write the number alone, without quotes or unit (2.5) [schema]',
    );
  });

  it.each([
    [
      { fuse: { ratedA: { value: 15, basis: "seen" } } },
      'circuits[0].fuse.ratedA.basis: wanted one of "measured", "marked", "typical", "assumed", got the text "seen"',
    ],
    [
      { fuse: { ratedA: { value: "15", basis: "marked" } } },
      'circuits[0].fuse.ratedA.value: wanted a number of amps, got the text "15"; write the number alone',
    ],
    [{ fuse: { ratedA: { value: 15 } } }, "circuits[0].fuse.ratedA.basis: wanted one of"],
    [{ fuse: { ratedA: [15] } }, "circuits[0].fuse.ratedA: wanted a number of amps or an object"],
    [
      { out: { lengthM: { value: 3, basis: "measured", plusMinus: -1 } } },
      "circuits[0].out.lengthM.plusMinus: wanted a number of metres at least 0, got the number -1",
    ],
    [{ out: { gauge: 14 } }, "circuits[0].out.gauge: wanted text in quotes or an object"],
    [{ channel: 65 }, "circuits[0].channel: wanted a number at most 64, got the number 65"],
    [{ channel: 1.5 }, "circuits[0].channel: wanted a whole number, got the number 1.5"],
    [{ module: "m 1" }, "circuits[0].module: wanted another spelling: an id is 1 to 64 letters"],
    [{ loads: "l1" }, "circuits[0].loads: wanted a list in [ ], got the text"],
    [{ unread: { Amps: 3 } }, "circuits[0].unread.Amps: wanted text in quotes, got the number 3"],
  ])("says what is wanted with unit and bound, never the validator's own words: %j", (fields, start) => {
    const faults = refusal(
      JSON.stringify({ format: "fusebook/1", id: "x", coach: { name: "x" }, circuits: [{ id: "c1", ...fields }] }),
    );
    expect(faults).toHaveLength(1);
    expect(faults[0]).toContain(start);
    expect(faults[0]).not.toMatch(/invalid/i);
  });

  it("names the kinds an address code may be, and what is missing in one", () => {
    const kind = (address: unknown) =>
      refusal(
        JSON.stringify({
          format: "fusebook/1",
          id: "x",
          coach: { name: "x" },
          moduleKinds: [{ id: "k", name: "k", channels: 8, bank: { switches: 4, address } }],
        }),
      );
    expect(kind({ kind: "odd" })).toEqual([
      'moduleKinds[0].bank.address.kind: wanted one of "weights", "table", got the text "odd"; pick the kind it is [schema]',
    ]);
    expect(
      kind({ kind: "weights", coding: "gray", firstAddress: 0, switches: [{ switch: 1, weight: 1, onMeans: 2 }] }),
    ).toEqual([
      "moduleKinds[0].bank.address.switches[0].onMeans: wanted one of 0, 1, got the number 2; correct it, or remove the field [schema]",
    ]);
  });

  it.each([["null"], ["[]"], ["3"], ['"text"'], ["true"]])("refuses %s as no record", (text) => {
    expect(refusal(text)[0]).toMatch(
      /^the document: wanted an object in { }, got .*; open a Fusebook record \[not-an-object\]$/,
    );
  });
});

describe("a kept file of the format before the first release", () => {
  it("opens, with fields renamed, feet turned to metres and every unknown field kept", () => {
    const before = kept();
    const outcome = openRecord(before);
    if (outcome.kind !== "read") throw new Error(outcome.faults.map(faultText).join("\n"));
    expect(outcome.migratedFrom).toBe("fusebook/0");
    const { record } = outcome;
    expect(record.format).toBe("fusebook/1");
    expect(record.coach).toEqual({ name: "Heron's Rest", nominalV: 12, isInvented: true, colourOfCurtains: "ochre" });
    expect(record.modules?.[0]).toMatchObject({ id: "m1", sticker: "faded", positionsFound: "10?1" });
    expect(record.circuits?.[0]).toMatchObject({
      module: "m1",
      channel: 1,
      fuse: { ratedA: { value: 10, basis: "marked" }, sootOnIt: false },
      oddity: { deep: [1, { er: null }] },
    });
    // 18 ft and 2 ft at 0.3048 m a foot (exact by definition).
    expect(record.circuits?.[0]?.out?.lengthM).toEqual({
      value: 5.4864,
      plusMinus: 0.6096,
      basis: "measured",
      by: "tape",
    });
    expect(record.loads?.[1]).toMatchObject({ name: "water pump", currentA: { value: 7.5, basis: "typical" } });
    expect(record.handwriting).toBe("unknown to every format");
    expect(kept()).toBe(before);
  });

  it("becomes a current file when written, and opens as one", () => {
    const outcome = openRecord(kept());
    if (outcome.kind !== "read") throw new Error("refused");
    const again = openRecord(writeRecord(outcome.record));
    expect(again).toEqual({ kind: "read", record: outcome.record });
  });
});

describe("a map with a value under the name __proto__", () => {
  it("is judged like any other name (found by the fuzz test: the validator passes over it)", () => {
    const text = (value: string) =>
      `{"format":"fusebook/1","id":"x","coach":{"name":"x"},"circuits":[{"id":"c1","unread":{"__proto__":${value}}}]}`;
    expect(openRecord(text('"kept"')).kind).toBe("read");
    expect(refusal(text("null"))).toEqual([
      "circuits[0].unread.__proto__: wanted text in quotes, got null; correct it, or remove the field [schema]",
    ]);
  });
});
