import { z } from "zod";
import { coachRecord, FORMAT } from "./schema/record.js";

/** The record's JSON Schema, draft 2020-12, from the same definition that validates and types it. */
export const jsonSchemaOf = (): Record<string, unknown> => {
  const schema = z.toJSONSchema(coachRecord, { target: "draft-2020-12", io: "input" }) as Record<string, unknown>;
  const { $schema, ...rest } = schema;
  return {
    $schema,
    $id: `urn:${FORMAT.replace("/", ":")}`,
    title: `Fusebook record, format ${FORMAT}`,
    description: "Everything known about one coach. Units are in the field names. Fields not named here are kept.",
    ...rest,
  };
};
