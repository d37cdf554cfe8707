import type { ChainPoint } from "./chain-problem.js";
import type { Effort, HeldColumn } from "./columns.js";
import type { Measures } from "./corners.js";
import { type Border, type Ending, endingsOf, grouped } from "./endings.js";
import type { Prepared } from "./prepared.js";

const TOLERANCE = 1e-7;

/** A partial solution: what it adds up to so far, places it has opened, and how it was made. */
interface Label {
  readonly cost: number;
  readonly value: number;
  readonly wires: number;
  readonly slack: number;
  readonly opened: number;
  /** Of each part: how many it takes more than it gives back. */
  readonly taken: readonly number[];
  readonly column: HeldColumn | undefined;
  readonly before: Label | undefined;
}

const openingCost = (prepared: Prepared, fresh: number): number => {
  let cost = 0;
  for (let place = 0, left = fresh; left !== 0; place++, left >>>= 1)
    if ((left & 1) === 1) cost += prepared.problem.places[place] ?? 0;
  return cost;
};

/** `a` can stand in for `b` in every plan, even where it must still open what `b` has open of the places ahead and buy the parts that it takes more of. */
function standsIn(prepared: Prepared, a: Label, b: Label, ahead: number): boolean {
  if (a.cost > b.cost || a.value < b.value || a.wires > b.wires) return false;
  const fresh = b.opened & ~a.opened & ahead;
  let cost = a.cost + (fresh === 0 ? 0 : openingCost(prepared, fresh));
  for (let k = 0; k < a.taken.length && cost <= b.cost; k++) {
    const more = (a.taken[k] as number) - (b.taken[k] as number);
    if (more > 0) cost += more * (prepared.problem.parts[k]?.price ?? 0);
  }
  return cost <= b.cost;
}

function insert(prepared: Prepared, labels: Label[], label: Label, ahead: number): void {
  for (const other of labels) if (standsIn(prepared, other, label, ahead)) return;
  let kept = 0;
  for (const other of labels) if (!standsIn(prepared, label, other, ahead)) labels[kept++] = other;
  labels.length = kept;
  labels.push(label);
}

function takenWith(prepared: Prepared, taken: readonly number[], { pattern }: HeldColumn): readonly number[] {
  if (pattern.fitsAt < 0 && pattern.freesAt < 0) return taken;
  const first = prepared.problem.homes.length;
  return taken.map((count, k) => count + Number(pattern.fitsAt === first + k) - Number(pattern.freesAt === first + k));
}

/** What a complete solution must buy. */
function buying(prepared: Prepared, label: Label): number {
  let cost = 0;
  label.taken.forEach((count, k) => {
    const part = prepared.problem.parts[k];
    if (part !== undefined && count > part.inStock) cost += (count - part.inStock) * part.price;
  });
  return cost;
}

function pointOf(prepared: Prepared, label: Label): ChainPoint {
  const columns: ChainPoint["columns"][number][] = [];
  for (let at: Label | undefined = label; at?.column !== undefined; at = at.before) {
    const { pattern, options } = at.column;
    columns.unshift({ pattern: pattern.at, options: options.map((option) => pattern.option[option] as number) });
  }
  return { cost: label.cost + buying(prepared, label), value: label.value, wires: label.wires, columns };
}

/** For each module the places that it or a later one may still open. */
function placesAhead(prepared: Prepared): number[] {
  const ahead = prepared.opens.map(() => 0);
  let mask = 0;
  for (let m = ahead.length - 1; m >= 0; m--) {
    mask |= prepared.opens[m] ?? 0;
    ahead[m] = mask;
  }
  return ahead;
}

type State = Border & { readonly labels: Label[] };

/**
 * Puts the columns together along the row, each circuit held exactly once: every solution `within` the limits whose slacks add up to at most `gap`, less those that another found beats.
 * Undefined where the effort runs out.
 */
export function joinColumns(
  prepared: Prepared,
  columns: readonly (readonly HeldColumn[])[],
  gap: number,
  within: Measures,
  effort: Effort,
): ChainPoint[] | undefined {
  const endings = endingsOf(prepared, columns, gap, effort);
  if (endings === undefined) return undefined;
  if (endings[0]?.has(0) !== true) return [];
  const ahead = placesAhead(prepared);
  const start: Label = {
    cost: 0,
    value: 0,
    wires: 0,
    slack: 0,
    opened: 0,
    taken: prepared.problem.parts.map(() => 0),
    column: undefined,
    before: undefined,
  };
  let states = new Map<number, State>([[0, { uncovered: 0, covered: 0, labels: [start] }]]);
  for (let m = 0; m < columns.length; m++) {
    const whole = prepared.whole[m] ?? 0;
    const scale = 2 ** (prepared.size[m + 1] ?? 0);
    const byLeft = grouped(columns[m] ?? [], (column) => column.left);
    const after = endings[m + 1] as Map<number, Ending>;
    const still = ahead[m + 1] ?? 0;
    const next = new Map<number, State>();
    for (const state of states.values())
      for (const column of byLeft.get(state.uncovered) ?? []) {
        if ((column.own & state.covered) !== 0) continue;
        const uncovered = whole & ~column.own & ~state.covered;
        const key = uncovered * scale + column.right;
        const ending = after.get(key);
        if (ending === undefined) continue;
        const spare = gap + TOLERANCE - column.slack - ending.slack;
        for (const label of state.labels) {
          if (
            label.slack > spare ||
            label.cost + column.cost + ending.cost > within.cost ||
            label.value + column.value + ending.value < within.value ||
            label.wires + column.wires + ending.wires > within.wires
          )
            continue;
          if (--effort.left <= 0) return undefined;
          let to = next.get(key);
          if (to === undefined) {
            to = { uncovered, covered: column.right, labels: [] };
            next.set(key, to);
          }
          const fresh = column.opens & ~label.opened;
          insert(
            prepared,
            to.labels,
            {
              cost: label.cost + column.cost + (fresh === 0 ? 0 : openingCost(prepared, fresh)),
              value: label.value + column.value,
              wires: label.wires + column.wires,
              slack: label.slack + column.slack,
              opened: label.opened | column.opens,
              taken: takenWith(prepared, label.taken, column),
              column,
              before: label,
            },
            still,
          );
        }
      }
    states = next;
  }
  return (states.get(0)?.labels ?? [])
    .map((label) => pointOf(prepared, label))
    .filter((point) => point.cost < Number.POSITIVE_INFINITY);
}
