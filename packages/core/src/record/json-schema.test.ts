import { readFileSync } from "node:fs";
import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, it } from "vitest";
import { jsonSchemaOf, newRecord, openRecord } from "./index.js";

const file = (path: string) => readFileSync(new URL(path, import.meta.url), "utf8");
const validate = new Ajv2020({ strict: false }).compile(jsonSchemaOf());

describe("the published JSON Schema", () => {
  it("is the one the code validates by (else: npm run build, then node packages/core/schema/write-schema.mjs)", () => {
    expect(JSON.parse(file("../../schema/fusebook-1.schema.json"))).toEqual(jsonSchemaOf());
  });

  it("is draft 2020-12 and holds no reference to the outside", () => {
    expect(jsonSchemaOf().$schema).toBe("https://json-schema.org/draft/2020-12/schema");
    expect(JSON.stringify(jsonSchemaOf())).not.toMatch(/"\$ref":"(?!#)/);
  });

  it("validates the demo, the kept old file once migrated, and a new record, under a general-purpose validator", () => {
    const kept = openRecord(file("../../../../fixtures/formats/fusebook-0.json"));
    expect(validate(JSON.parse(file("../../../../fixtures/demo/marsh-wren.fusebook.json")))).toBe(true);
    expect(validate(kept.kind === "read" ? kept.record : undefined)).toBe(true);
    expect(validate(newRecord({ id: "x", name: "X" }))).toBe(true);
  });

  it("refuses a record without a coach, and a figure with an unknown basis", () => {
    expect(validate({ format: "fusebook/1", id: "x" })).toBe(false);
    expect(
      validate({
        ...newRecord({ id: "x", name: "X" }),
        loads: [{ id: "l", name: "l", currentA: { value: 1, basis: "heard" } }],
      }),
    ).toBe(false);
  });
});
