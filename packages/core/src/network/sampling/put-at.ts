type Loose = Record<string | number, unknown>;

/** The names and places of a path: `circuits[3].fuse.resistanceOhm` is circuits, 3, fuse, resistanceOhm. */
export const stepsOf = (path: string): readonly (string | number)[] =>
  path
    .split(/[.[\]]+/)
    .filter((step) => step !== "")
    .map((step) => (/^\d+$/.test(step) ? Number(step) : step));

/** What stands at this path; undefined where nothing does. */
export function valueAt(root: unknown, path: string): unknown {
  let at: unknown = root;
  for (const step of stepsOf(path)) {
    if (typeof at !== "object" || at === null) return undefined;
    at = (at as Loose)[step];
  }
  return at;
}

/** Puts a value at this path; objects on the way that are not there are made. */
export function putAt(root: object, path: string, value: unknown): void {
  const steps = stepsOf(path);
  let at = root as Loose;
  for (const step of steps.slice(0, -1)) {
    const next = at[step];
    const made = typeof next === "object" && next !== null ? next : {};
    at[step] = made;
    at = made as Loose;
  }
  at[steps.at(-1)!] = value;
}
