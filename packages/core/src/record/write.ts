import { RECORD_SHAPE, type Shape } from "./schema/shape.js";
import type { CoachRecord } from "./schema/types.js";

const LINE_WIDTH = 110;

const namesInOrder = (value: object, shape: Shape | undefined): string[] => {
  const fields = shape?.fields;
  const own = Object.keys(value).filter((name) => (value as Record<string, unknown>)[name] !== undefined);
  const unknown = own.filter((name) => fields?.has(name) !== true).sort((a, b) => (a < b ? -1 : a > b ? 1 : 0));
  if (fields === undefined || unknown.length === own.length) return unknown;
  return [...[...fields.keys()].filter((name) => Object.hasOwn(value, name) && own.includes(name)), ...unknown];
};

/** A value on one line, as short leaves are written; undefined where it does not fit. */
const onOneLine = (parts: readonly string[], open: string, close: string, indent: string): string | undefined => {
  let length = indent.length + 4;
  for (const part of parts) {
    length += part.length + 2;
    if (length > LINE_WIDTH || part.includes("\n")) return undefined;
  }
  return parts.length === 0 ? `${open}${close}` : `${open} ${parts.join(", ")} ${close}`;
};

const written = (value: unknown, shape: Shape | undefined, indent: string): string => {
  if (typeof value !== "object" || value === null) return JSON.stringify(value) ?? "null";
  const inner = `${indent}  `;
  const isList = Array.isArray(value);
  const parts = isList
    ? value.map((item) => written(item, shape?.item, inner))
    : namesInOrder(value, shape).map(
        (name) =>
          `${JSON.stringify(name)}: ${written((value as Record<string, unknown>)[name], shape?.fields?.get(name), inner)}`,
      );
  const [open, close] = isList ? ["[", "]"] : ["{", "}"];
  return onOneLine(parts, open, close, indent) ?? `${open}\n${inner}${parts.join(`,\n${inner}`)}\n${indent}${close}`;
};

/**
 * The text of a record file. Stable: the same content gives the same text, whatever order its fields were set in (the schema's order, then unknown
 * fields by name), so that two files can be compared line by line. Every field is kept, known or not.
 */
export const writeRecord = (record: CoachRecord): string => `${written(record, RECORD_SHAPE, "")}\n`;
