import type { WeightsCode } from "./inference.js";

/**
 * How far is a rule from the plainest one: switches side by side in one direction, ON counting, binary? One for each departure.
 * It only orders a list; a plain rule is no likelier for being plain.
 */
export function departuresOf(rule: WeightsCode): number {
  const row = [...rule.switches].sort((a, b) => a.weight - b.weight);
  let departures = rule.coding === "gray" ? 1 : 0;
  const direction = row.length > 1 && row[1]!.switch < row[0]!.switch ? -1 : 1;
  row.forEach((each, i) => {
    if (each.onMeans === 0) departures++;
    const before = row[i - 1];
    if (before && each.switch !== before.switch + direction) departures++;
  });
  if (row[0] && direction === 1 && row[0].switch !== 1) departures++;
  return direction === -1 ? departures + 1 : departures;
}

/** Plainest first; where equal, the order given. */
export const plainestFirst = (rules: readonly WeightsCode[]): WeightsCode[] =>
  rules
    .map((rule) => ({ rule, departures: departuresOf(rule) }))
    .sort((a, b) => a.departures - b.departures)
    .map((each) => each.rule);
