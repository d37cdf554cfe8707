import { type Figure, figureBasis, gaugeNumber, gaugeSize, kindOfField, readGauge, spanOf } from "../quantity/index.js";
import { type CoachIndex, type NotedText, policyOf, textValue } from "../record/index.js";
import { necStandardDevices, standardFuses } from "../tables/index.js";

/** Classes as they are printed on insulation, C; those that the record's schema lists. */
const INSULATION_C = [60, 75, 80, 90, 105, 125, 200];
/** A bundle that nobody counted: this wire alone up to the first row of the table that derates. */
const BUNDLE = [1, 2, 3, 4, 5, 6];
/** Two sizes up and down: how far a gauge that nobody read is doubted. */
const GAUGE_STEPS = { typical: [-2, 0, 2], assumed: [-4, -2, 0, 2, 4] } as const;

const RATINGS: ReadonlySet<string> = new Set(["ratedA", "maxFuseA"]);

const sizes = (): number[] =>
  [...new Set([...standardFuses().map((fuse) => fuse.ratedA), ...necStandardDevices().value])].sort((a, b) => a - b);

const listOf = (field: string): readonly number[] | undefined =>
  field === "insulationC" ? INSULATION_C : field === "bundleCount" ? BUNDLE : RATINGS.has(field) ? sizes() : undefined;

/** Gauges near a guessed one, in its own system. */
function gaugesNear(index: CoachIndex, held: NotedText): string[] | undefined {
  const basis = typeof held === "string" ? "marked" : held.basis;
  if (basis !== "typical" && basis !== "assumed") return undefined;
  const read = readGauge(textValue(held), { bareIs: policyOf(index.record).areaBasis });
  if (read.kind === "unread" || read.system === "mm2") return undefined;
  const number = gaugeNumber(read.size);
  if (number === undefined) return undefined;
  const system = read.isSystemStated ? ` ${read.system.toUpperCase()}` : "";
  return GAUGE_STEPS[basis].map((step) => `${gaugeSize(number + step)}${system}`);
}

/**
 * What may a look at this field find? The sizes and classes that exist, within what the record allows; each is taken to be as likely as the next
 * (common practice, no source). Undefined where any value may be found, or where its print was read already.
 */
export function printedChoices(
  index: CoachIndex,
  path: string,
  field: string,
  held: unknown,
): readonly (number | string)[] | undefined {
  if (field === "gauge") return held === undefined ? undefined : gaugesNear(index, held as NotedText);
  const list = listOf(field);
  if (list === undefined) return undefined;
  // A rating that is not on record may be anything that is sold: no reading can be weighed against that.
  if (held === undefined) return RATINGS.has(field) ? undefined : list;
  const figure = held as Figure;
  const basis = figureBasis(figure);
  if (basis === "marked" || basis === "measured") return undefined;
  const { lo, hi } = spanOf(figure, kindOfField(path));
  const within = list.filter((one) => lo <= one && one <= hi);
  return within.length > 0 ? within : undefined;
}
