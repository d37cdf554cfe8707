import { z } from "zod";
import { BASES } from "../../quantity/index.js";

const known = {
  basis: z
    .enum(BASES)
    .describe(
      "measured: with an instrument; marked: read off a label or print; typical: a class figure; assumed: nobody looked",
    ),
  at: z.string().optional().describe("ISO date of the reading"),
  by: z.string().optional().describe("instrument or person's role; no personal data needed"),
  note: z.string().optional(),
};

/** A figure: a bare number (its basis is `marked`) or an object that says how it is known. Units are in the field's name. */
export const figure = z
  .union([
    z.number(),
    z.looseObject({
      value: z.number(),
      plusMinus: z.number().nonnegative().optional().describe("half-width of the interval it may lie in, same unit"),
      ...known,
    }),
  ])
  .describe("a number as marked, or a value with how it is known");

/** A word as written, with how it is known: a gauge, say. */
export const notedText = z.union([z.string(), z.looseObject({ value: z.string(), ...known })]);
export type NotedText = z.infer<typeof notedText>;

/** What was written. */
export const textValue = (text: NotedText): string => (typeof text === "string" ? text : text.value);
