import { type ColumnLimits, searchLaid } from "./column-search.js";
import type { Measures } from "./corners.js";
import { layPattern, lowOf, quickBound } from "./laid-pattern.js";
import type { Prepared, PreparedPattern } from "./prepared.js";
import type { Priced } from "./prices.js";

/** A column on its way into a join: which circuits it holds of the module before, its own and the one after, and what it adds. */
export interface HeldColumn {
  readonly left: number;
  readonly own: number;
  readonly right: number;
  /** How much more it weighs than the least column of its module. */
  readonly slack: number;
  /** Places not counted. */
  readonly cost: number;
  readonly value: number;
  readonly wires: number;
  /** Places that it opens, as a bit mask. */
  readonly opens: number;
  readonly pattern: PreparedPattern;
  /** Places in the prepared pattern. */
  readonly options: readonly number[];
}

const TOLERANCE = 1e-7;

/** Work left: steps of a search count down to 0, then it gives up. */
export interface Effort {
  left: number;
}

const standsIn = (a: HeldColumn, b: HeldColumn): boolean =>
  a.cost <= b.cost &&
  a.value >= b.value &&
  a.wires <= b.wires &&
  (a.opens & ~b.opens) === 0 &&
  (a.pattern.fitsAt < 0 || a.pattern.fitsAt === b.pattern.fitsAt) &&
  (b.pattern.freesAt < 0 || a.pattern.freesAt === b.pattern.freesAt);

function columnsOfModule(
  prepared: Prepared,
  priced: Priced,
  module: number,
  gap: number,
  most: ColumnLimits,
  effort: Effort,
): HeldColumn[] | undefined {
  const { weights, prices } = priced;
  const least = priced.least[module] as number;
  const limit = least + gap + TOLERANCE;
  const scaleOwn = 2 ** (prepared.size[module - 1] ?? 0);
  const scaleRight = scaleOwn * 2 ** (prepared.size[module] ?? 0);
  const whole = prepared.whole[module] as number;
  const held = new Map<number, HeldColumn[]>();
  for (const pattern of prepared.modules[module] ?? []) {
    if (quickBound(pattern, weights, prices) > limit) continue;
    const low = lowOf(layPattern(pattern, weights, prices, 0));
    if (low > limit) continue;
    const laid = layPattern(pattern, weights, prices, limit - low);
    const keep = (weighed: number, taken: readonly number[]): void => {
      effort.left -= 1;
      const sides = [0, 0, 0];
      let { cost, value } = pattern.pattern;
      let wires = 0;
      for (const each of taken) {
        const at = laid.option[each] as number;
        const side = pattern.side[at] as number;
        sides[side] = (sides[side] as number) | (pattern.bit[at] as number);
        cost += pattern.cost[at] as number;
        value += pattern.value[at] as number;
        wires += pattern.wires[at] as number;
      }
      const [left, own, right] = sides as [number, number, number];
      const isTouched = pattern.pattern.isTouched || wires > 0 || own !== whole;
      const column: HeldColumn = {
        left,
        own,
        right,
        slack: Math.max(0, weighed - least),
        cost,
        value,
        wires,
        opens: isTouched ? (prepared.opens[module] as number) : 0,
        pattern,
        options: taken.map((each) => laid.option[each] as number),
      };
      const key = left + own * scaleOwn + right * scaleRight;
      const list = held.get(key);
      if (list === undefined) held.set(key, [column]);
      else if (!list.some((other) => standsIn(other, column)))
        held.set(key, [...list.filter((other) => !standsIn(column, other)), column]);
    };
    searchLaid(
      laid,
      () => limit,
      keep,
      most,
      () => --effort.left <= 0,
    );
    if (effort.left <= 0) return undefined;
  }
  return [...held.values()].flat().sort((a, b) => a.slack - b.slack);
}

/**
 * Every column of each module that weighs at most `gap` more than the least of its module, so that every solution within `gap` of the bound is made of them. Of columns that
 * hold the same circuits only those stay that no other stands in for. What cannot be part of a solution `within` cost and wires is left out. Undefined where the effort runs out.
 */
export function columnsWithin(
  prepared: Prepared,
  priced: Priced,
  gap: number,
  within: Measures,
  effort: Effort,
): HeldColumn[][] | undefined {
  const cheapest = prepared.modules.map((patterns) => Math.min(...patterns.map(({ pattern }) => pattern.cost)));
  const others = cheapest.reduce((sum, cost) => sum + cost, 0);
  const all: HeldColumn[][] = [];
  for (let module = 0; module < prepared.modules.length; module++) {
    const columns = columnsOfModule(
      prepared,
      priced,
      module,
      gap,
      { cost: within.cost - others + (cheapest[module] as number), wires: within.wires },
      effort,
    );
    if (columns === undefined) return undefined;
    all.push(columns);
  }
  return all;
}
