type Fields = Readonly<Record<string, unknown>>;

export const isFields = (value: unknown): value is Fields =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** Sets a field even when it is called `__proto__`. */
const put = (target: object, name: string, value: unknown): void => {
  Object.defineProperty(target, name, { value, enumerable: true, writable: true, configurable: true });
};

/**
 * Renames fields of an object and converts their values, keeping every other field and the order. A field that already stands under the new
 * name was unknown to the old format: it is kept under `kept` and its name.
 */
export function renamed(
  fields: Fields,
  names: Readonly<Record<string, string>>,
  kept: string,
  convert: (value: unknown, name: string) => unknown = (value) => value,
): Fields {
  const result: Record<string, unknown> = {};
  const taken = new Set(
    Object.keys(names)
      .filter((old) => Object.hasOwn(fields, old))
      .map((old) => names[old]),
  );
  for (const [name, value] of Object.entries(fields)) {
    const next = Object.hasOwn(names, name) ? names[name] : undefined;
    if (next !== undefined) put(result, next, convert(value, next));
    else {
      let free = name;
      while (taken.has(free) || (free !== name && Object.hasOwn(fields, free))) free = `${kept}${free}`;
      put(result, free, convert(value, name));
    }
  }
  return result;
}

/** Applies a step to each object of a list; anything else in it is left as it is. */
export const each = (value: unknown, step: (item: Fields) => Fields): unknown =>
  Array.isArray(value) ? value.map((item) => (isFields(item) ? step(item) : item)) : value;
