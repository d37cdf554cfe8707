import type { z } from "zod";
import { pathText, type SchemaFault, shown } from "./fault.js";

type Issue = z.core.$ZodIssue;

const UNITS: readonly (readonly [RegExp, string])[] = [
  [/Mm2$/, " of square millimetres"],
  [/Mm$/, " of millimetres"],
  [/Ah$/, " of amp-hours"],
  [/Ohm$/, " of ohms"],
  [/Hz$/, " of hertz"],
  [/Kbit$/, " of kilobits a second"],
  [/Hours$/, " of hours"],
  [/[a-z]Min$|Minutes$|^minutes$/, " of minutes"],
  [/Ratio$/, " (a share: 0.03 is 3 %)"],
  [/[a-z]A$/, " of amps"],
  [/[a-z]V$/, " of volts"],
  [/[a-z]W$/, " of watts"],
  [/[a-z]M$/, " of metres"],
  [/[a-z]C$/, " of degrees Celsius"],
];

/** The unit a field's name states, in words; a figure's own value and plusMinus take it from the figure's field. */
const unitWords = (path: readonly PropertyKey[]): string => {
  const names = path.filter((key): key is string => typeof key === "string");
  const last = names.at(-1) ?? "";
  const name = last === "value" || last === "plusMinus" ? (names.at(-2) ?? "") : last;
  return UNITS.find(([suffix]) => suffix.test(name))?.[1] ?? "";
};

const oneOf = (values: readonly unknown[]): string => {
  const texts = values.map((value) => JSON.stringify(value));
  return texts.length === 1 ? (texts[0] ?? "") : `one of ${texts.join(", ")}`;
};

const TYPES: Readonly<Record<string, string>> = {
  string: "text in quotes",
  boolean: "true or false",
  array: "a list in [ ]",
  object: "an object in { }",
  record: "an object in { }",
  int: "a whole number",
};

const typeWords = (expected: string, path: readonly PropertyKey[]): string =>
  expected === "number" ? `a number${unitWords(path)}` : (TYPES[expected] ?? expected);

const REMOVE = "correct it, or remove the field";

const numberHint = (got: unknown): string => {
  const lead = typeof got === "string" ? /^\s*[~<>]?\s*(-?\d*\.?\d+)/.exec(got)?.[1] : undefined;
  return lead === undefined ? REMOVE : `write the number alone, without quotes or unit (${Number(lead)})`;
};

const bound = (issue: Issue & { code: "too_small" | "too_big" }, path: readonly PropertyKey[]): string => {
  const limit = issue.code === "too_small" ? issue.minimum : issue.maximum;
  const sense =
    issue.code === "too_small" ? (issue.inclusive ? "at least" : "above") : issue.inclusive ? "at most" : "below";
  if (issue.origin === "string") return `text of ${sense} ${limit} characters`;
  if (issue.origin === "array" || issue.origin === "set") return `a list of ${sense} ${limit}`;
  return `a number${unitWords(path)} ${sense} ${limit}`;
};

/** The faults inside a union: those of the one branch the value was meant for, else one fault that says what either branch wants. */
const ofUnion = (
  issue: Issue & { code: "invalid_union" },
  path: readonly PropertyKey[],
  document: unknown,
): SchemaFault[] => {
  const got = valueAt(document, path);
  const branches = issue.errors as readonly (readonly Issue[])[];
  const meant = branches.filter((issues) => issues.every((inner) => inner.path.length > 0));
  if (meant.length === 1) return (meant[0] ?? []).flatMap((inner) => faultsOf(inner, path, document));
  const roots = branches.flatMap((issues) => issues.filter((inner) => inner.path.length === 0));
  const literals = roots.flatMap((inner) => (inner.code === "invalid_value" ? inner.values : []));
  const types = roots.flatMap((inner) =>
    inner.code === "invalid_type"
      ? [typeWords(inner.expected, path).replace("an object in { }", figureWords(inner))]
      : [],
  );
  const wanted = [...new Set([...(literals.length > 0 ? [oneOf(literals)] : []), ...types])];
  const hint = types.some((type) => type.startsWith("a number")) ? numberHint(got) : REMOVE;
  return [fault(path, `wanted ${wanted.join(" or ") || "another form"}, got ${shown(got)}; ${hint}`)];
};

const figureWords = (_issue: Issue): string => 'an object such as { "value": …, "basis": "measured" }';

const fault = (path: readonly PropertyKey[], message: string): SchemaFault => ({
  path: pathText(path),
  code: path.length === 0 ? "not-an-object" : path.length === 1 && path[0] === "format" ? "format" : "schema",
  message,
});

/** What a document holds at a path; undefined where it holds nothing. */
const valueAt = (document: unknown, path: readonly PropertyKey[]): unknown =>
  path.reduce<unknown>(
    (value, key) =>
      value !== null && typeof value === "object" && Object.hasOwn(value, key)
        ? (value as Record<PropertyKey, unknown>)[key]
        : undefined,
    document,
  );

/** One issue of the validator as faults in our own words, unions flattened. `within` is the path the issue's own path starts from. */
export function faultsOf(issue: Issue, within: readonly PropertyKey[], document: unknown): SchemaFault[] {
  const path = [...within, ...issue.path];
  const got = valueAt(document, path);
  switch (issue.code) {
    case "invalid_union":
      if (issue.errors.length > 0) return ofUnion(issue, path, document);
      return [
        fault(
          path,
          `wanted ${oneOf((issue as { options?: readonly unknown[] }).options ?? [])}, got ${shown(got)}; pick the kind it is`,
        ),
      ];
    case "invalid_type": {
      const wanted = typeWords(issue.expected, path);
      const isNumber = issue.expected === "number" || issue.expected === "int";
      const next = got === undefined ? "add it: nothing can be read without it" : isNumber ? numberHint(got) : REMOVE;
      return [
        fault(path, `wanted ${wanted}, got ${shown(got)}; ${path.length === 0 ? "open a Fusebook record" : next}`),
      ];
    }
    case "invalid_value": {
      const next = got === undefined ? "add it: nothing can be read without it" : REMOVE;
      return [fault(path, `wanted ${oneOf(issue.values)}, got ${shown(got)}; ${next}`)];
    }
    case "too_small":
    case "too_big":
      return [fault(path, `wanted ${bound(issue, path)}, got ${shown(got)}; ${REMOVE}`)];
    case "invalid_format":
      return [
        fault(path, `wanted another spelling: ${issue.message}, got ${shown(got)}; respell it, everywhere it is used`),
      ];
    case "invalid_key":
    case "invalid_element":
      return issue.issues.flatMap((inner) => faultsOf(inner, path, document));
    default:
      return [fault(path, `wanted another value (${issue.message}), got ${shown(got)}; ${REMOVE}`)];
  }
}
