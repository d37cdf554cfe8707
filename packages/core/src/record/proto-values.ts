import { z } from "zod";
import type { SchemaFault } from "./fault.js";
import { faultsOf } from "./faults-of.js";
import { RECORD_SHAPE, type Shape } from "./schema/shape.js";

const NAME = "__proto__";

/** Where maps of names to values stand in the schema, each as the steps to it; `[]` is every item of a list. */
const mapsIn = (shape: Shape, path: readonly string[]): { path: readonly string[]; values: z.core.$ZodType }[] => [
  ...(shape.values === undefined ? [] : [{ path, values: shape.values }]),
  ...(shape.item === undefined ? [] : mapsIn(shape.item, [...path, "[]"])),
  ...[...(shape.fields ?? [])].flatMap(([name, inner]) => mapsIn(inner, [...path, name])),
];

const MAPS = mapsIn(RECORD_SHAPE, []);

function* placesOf(
  value: unknown,
  steps: readonly string[],
  at: readonly (string | number)[],
): Generator<readonly (string | number)[]> {
  const [step, ...rest] = steps;
  if (typeof value !== "object" || value === null) return;
  if (step === undefined) {
    if (Object.hasOwn(value, NAME)) yield at;
  } else if (step === "[]") {
    if (Array.isArray(value)) for (const [i, item] of value.entries()) yield* placesOf(item, rest, [...at, i]);
  } else if (Object.hasOwn(value, step)) yield* placesOf((value as Record<string, unknown>)[step], rest, [...at, step]);
}

/**
 * Faults of values under the name `__proto__` in a map (a survey's heading may be anything): the validator passes over that name, the published
 * schema does not.
 */
export function protoFaults(document: unknown): SchemaFault[] {
  const faults: SchemaFault[] = [];
  for (const { path, values } of MAPS)
    for (const at of placesOf(document, path, [])) {
      const map = at.reduce<unknown>((value, key) => (value as Record<string | number, unknown>)[key], document);
      const parsed = z.safeParse(values, (map as Record<string, unknown>)[NAME]);
      if (!parsed.success)
        for (const issue of parsed.error.issues) faults.push(...faultsOf(issue, [...at, NAME], document));
    }
  return faults;
}
