import type { CoachIndex, FullPolicy, ModuleKindId, PlaceId } from "../record/index.js";
import { stockOf } from "./candidate.js";
import { wholeMinutes } from "./labour.js";
import type { Option, Position } from "./option.js";
import { type Partial, type Rivalry, undominated } from "./undominated.js";

/** How a partial plan was put together, so that its choices can be read back. */
export type Made =
  | { readonly kind: "none" }
  | { readonly kind: "option"; readonly option: Option }
  | { readonly kind: "join"; readonly left: Made; readonly right: Made };

const NONE: Made = { kind: "none" };
const SIXTIETHS = 60;
const NO_STOCK: number[] = [];

/** Prices and rates as whole numbers, and the kinds of which there is stock. */
export interface Money {
  readonly rateCentsPerHour: number;
  readonly stocked: readonly { readonly id: ModuleKindId; readonly count: number; readonly priceCents: number }[];
  readonly rivalry: Rivalry;
  /** Places that any work opens: see `isolationPlaces`. */
  readonly alwaysOpened: readonly PlaceId[];
}

export const centsOf = (amount: number | undefined): number => Math.round((amount ?? 0) * 100);

/** What parts and an hour cost, in whole cents; a stocked kind without a price cannot be bought beyond its stock where others have prices. */
export function moneyOf(index: CoachIndex, policy: FullPolicy, minutesCount: boolean): Money {
  const kinds = [...index.moduleKinds.values()];
  const isPriced = kinds.some((kind) => kind.price !== undefined);
  const stocked = kinds
    .filter((kind) => stockOf(kind) > 0)
    .map((kind) => ({
      id: kind.id,
      count: stockOf(kind),
      priceCents:
        (kind.price === undefined && isPriced) || kind.isObtainable === false
          ? Number.POSITIVE_INFINITY
          : centsOf(kind.price),
    }));
  return {
    rateCentsPerHour: centsOf(policy.labourRatePerHour),
    stocked,
    alwaysOpened: isolationPlaces(index),
    rivalry: { minutesCount, priceOfStocked: stocked.map((kind) => kind.priceCents * SIXTIETHS) },
  };
}

function leaf(option: Option, money: Money): Partial<Made> {
  const at = option.isReplaced ? money.stocked.findIndex((kind) => kind.id === option.kind?.id) : -1;
  const priceCents = option.isReplaced && at < 0 ? centsOf(option.kind?.price) : 0;
  return {
    cost: priceCents * SIXTIETHS + option.minutes * money.rateCentsPerHour,
    value: option.value,
    touched: option.isTouched ? 1 : 0,
    minutes: option.minutes,
    stock: money.stocked.map((_, i) => (i === at ? 1 : 0)),
    made: { kind: "option", option },
  };
}

function join(a: Partial<Made>, b: Partial<Made>, money: Money): Partial<Made> | undefined {
  let cost = a.cost + b.cost;
  const stock: number[] = money.stocked.length === 0 ? NO_STOCK : [];
  for (let i = 0; i < money.stocked.length; i++) {
    const wanted = (a.stock[i] ?? 0) + (b.stock[i] ?? 0);
    const kind = money.stocked[i];
    const count = kind?.count ?? 0;
    if (wanted > count) {
      const priceCents = kind?.priceCents ?? 0;
      if (priceCents === Number.POSITIVE_INFINITY) return undefined;
      cost += (wanted - count) * priceCents * SIXTIETHS;
    }
    stock.push(Math.min(wanted, count));
  }
  return {
    cost,
    value: a.value + b.value,
    touched: a.touched + b.touched,
    minutes: a.minutes + b.minutes,
    stock,
    made:
      a.made.kind === "none" ? b.made : b.made.kind === "none" ? a.made : { kind: "join", left: a.made, right: b.made },
  };
}

function joinAll(left: readonly Partial<Made>[], right: readonly Partial<Made>[], money: Money): Partial<Made>[] {
  const joined: Partial<Made>[] = [];
  for (const a of left)
    for (const b of right) {
      const both = join(a, b, money);
      if (both !== undefined) joined.push(both);
    }
  return undominated(joined, money.rivalry);
}

interface PlaceTree {
  readonly accessMin: number;
  readonly positions: { readonly position: Position; readonly options: readonly Option[] }[];
  readonly inside: Map<PlaceId, PlaceTree>;
}

/** The places from the outermost to the module's own. A place within itself ends the chain: the rule on references reports it. */
export function placesTo(index: CoachIndex, place: PlaceId | undefined): PlaceId[] {
  const chain: PlaceId[] = [];
  for (
    let at = place;
    at !== undefined && !chain.includes(at) && index.places.has(at);
    at = index.places.get(at)?.within
  )
    chain.unshift(at);
  return chain;
}

/** Places that any work opens: where the supplies are isolated, and the places those lie in. */
export function isolationPlaces(index: CoachIndex): PlaceId[] {
  const places = new Set<PlaceId>();
  for (const supply of index.supplies.values())
    for (const place of placesTo(index, supply.isolation?.place ?? supply.place)) places.add(place);
  return [...places];
}

const accessOf = (index: CoachIndex, place: PlaceId): number => wholeMinutes(index.places.get(place)?.accessMin);

function mergeTree(tree: PlaceTree, money: Money): Partial<Made>[] {
  let front: Partial<Made>[] = [
    { cost: 0, value: 0, touched: 0, minutes: 0, stock: money.stocked.map(() => 0), made: NONE },
  ];
  for (const { options } of tree.positions)
    front = joinAll(
      front,
      undominated(
        options.map((option) => leaf(option, money)),
        money.rivalry,
      ),
      money,
    );
  for (const inside of tree.inside.values()) front = joinAll(front, mergeTree(inside, money), money);
  if (tree.accessMin === 0) return front;
  return front.map((partial) =>
    partial.touched === 0
      ? partial
      : {
          ...partial,
          cost: partial.cost + tree.accessMin * money.rateCentsPerHour,
          minutes: partial.minutes + tree.accessMin,
        },
  );
}

/**
 * Every combination of the positions' options that no other beats on cost, wish value and modules touched (and minutes or stock where they count),
 * without listing the combinations. Positions in one place share its access minutes, so the merge goes place by place, innermost first: whether a
 * place is opened is known when everything inside it is merged. The places where the supplies are isolated are opened as soon as anything is touched.
 */
export function mergePositions(
  index: CoachIndex,
  positions: readonly { readonly position: Position; readonly options: readonly Option[] }[],
  money: Money,
): Partial<Made>[] {
  const always = money.alwaysOpened;
  const accessMin = always.reduce((sum, place) => sum + accessOf(index, place), 0);
  const root: PlaceTree = { accessMin, positions: [], inside: new Map() };
  for (const each of positions) {
    let tree = root;
    for (const place of placesTo(index, each.position.module.place)) {
      let next = tree.inside.get(place);
      if (next === undefined) {
        next = {
          accessMin: always.includes(place) ? 0 : accessOf(index, place),
          positions: [],
          inside: new Map(),
        };
        tree.inside.set(place, next);
      }
      tree = next;
    }
    tree.positions.push(each);
  }
  return mergeTree(root, money);
}

/** The options a partial plan is made of. */
export function optionsIn(made: Made): Option[] {
  const options: Option[] = [];
  const open: Made[] = [made];
  for (let at = open.pop(); at !== undefined; at = open.pop()) {
    if (at.kind === "option") options.push(at.option);
    else if (at.kind === "join") open.push(at.right, at.left);
  }
  return options;
}
