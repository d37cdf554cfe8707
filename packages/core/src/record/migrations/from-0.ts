import { each, isFields, renamed } from "./rename.js";

/** Exact by definition. Multiplied first and divided after, so that 18 ft is 5.4864 m and not one last digit off. */
const feet = (value: number): number => (value * 3048) / 10_000;
const KEPT = "fusebook0_";

/** A figure of feet as metres; what is no figure is left as it is, and the schema will name it. */
const feetToMetres = (figure: unknown): unknown => {
  if (typeof figure === "number") return feet(figure);
  if (!isFields(figure)) return figure;
  const scaled = (value: unknown) => (typeof value === "number" ? feet(value) : value);
  return Object.fromEntries(
    Object.entries(figure).map(([name, value]) => [
      name,
      name === "value" || name === "plusMinus" ? scaled(value) : value,
    ]),
  );
};

const run = (value: unknown): unknown =>
  isFields(value)
    ? renamed(value, { lengthFt: "lengthM" }, KEPT, (inner, name) =>
        name === "lengthM" && Object.hasOwn(value, "lengthFt") ? feetToMetres(inner) : inner,
      )
    : value;

const circuit = (item: Readonly<Record<string, unknown>>) =>
  renamed(item, { box: "module", slot: "channel", wire: "out" }, KEPT, (value, name) => {
    if (name === "out" || name === "return") return run(value);
    if (name === "fuse" && isFields(value)) return renamed(value, { amps: "ratedA" }, KEPT);
    return value;
  });

const load = (item: Readonly<Record<string, unknown>>) => renamed(item, { what: "name", amps: "currentA" }, KEPT);

/** fusebook/0, a format from before the first release: other field names, and wire lengths in feet. */
export const from0 = (document: Readonly<Record<string, unknown>>): Readonly<Record<string, unknown>> => ({
  ...renamed(document, { rig: "coach", boxes: "modules" }, KEPT, (value, name) => {
    if (name === "circuits") return each(value, circuit);
    if (name === "loads") return each(value, load);
    return value;
  }),
  format: "fusebook/1",
});
