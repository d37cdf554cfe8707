import type { MilpColumn, MilpRow } from "../milp/index.js";
import type { MovesProblem, Placing } from "./problem.js";
import { placesOpenedBy } from "./score.js";

export type Term = readonly [number, number];

/** Columns and rows as they are being written. */
export class Draft {
  readonly columns: MilpColumn[] = [];
  readonly rows: MilpRow[] = [];
  binary(name: string, group: string, upper = 1): number {
    this.columns.push({ name, group, cost: 0, lower: 0, upper, isInteger: true });
    return this.columns.length - 1;
  }
  row(name: string, group: string, lower: number, upper: number, terms: readonly Term[]): number {
    const summed = new Map<number, number>();
    for (const [column, coefficient] of terms) summed.set(column, (summed.get(column) ?? 0) + coefficient);
    this.rows.push({ name, group, lower, upper, terms: [...summed].filter(([, coefficient]) => coefficient !== 0) });
    return this.rows.length - 1;
  }
}

export const NO_END = Number.POSITIVE_INFINITY;
const milliamps = (currentA: number): number => Math.round(currentA * 1e6) / 1e3;

/** The sets of patterns that the placings of one circuit on one module lean on, each once. */
function leanings(placings: readonly Placing[]): number[][] {
  const sets = placings.map((placing) => [...placing.patterns].sort((a, b) => a - b)).filter((set) => set.length > 0);
  return [...new Map(sets.map((set) => [set.join(" "), set])).values()];
}

/** Each circuit sits once, and only under a pattern that lets it sit so. */
export function linkRows(draft: Draft, problem: MovesProblem, pattern: number[][], placing: number[][]): void {
  problem.circuits.forEach((circuit, c) => {
    draft.row(
      `one ${circuit.circuit}`,
      `circuit ${circuit.circuit}`,
      1,
      1,
      (placing[c] ?? []).map((column) => [column, 1]),
    );
    for (const m of new Set(circuit.placings.flatMap((each) => each.module ?? []))) {
      const here = circuit.placings.filter((each) => each.module === m);
      const count = problem.modules[m]?.patterns.length ?? 0;
      leanings(here).forEach((set, i) => {
        if (set.length === count) return;
        // Every way of sitting that needs one of these patterns and no other: together they are at most what is chosen of the patterns.
        const leaning = circuit.placings.flatMap((each, j) =>
          each.module === m && each.patterns.every((p) => set.includes(p)) ? [placing[c]?.[j] ?? -1] : [],
        );
        draft.row(
          `lean ${circuit.circuit} ${problem.modules[m]?.module} ${i}`,
          `circuit ${circuit.circuit}`,
          -NO_END,
          0,
          [...leaning.map((column): Term => [column, 1]), ...set.map((p): Term => [pattern[m]?.[p] ?? -1, -1])],
        );
      });
    }
  });
}

/** Each module does one thing; its channels and its ratings hold, and so do those of the feeders. */
export function moduleRows(draft: Draft, problem: MovesProblem, pattern: number[][], placing: number[][]): void {
  const onModule: { column: number; placing: Placing }[][] = problem.modules.map(() => []);
  problem.circuits.forEach((circuit, c) => {
    circuit.placings.forEach((each, j) => {
      if (each.module !== undefined) onModule[each.module]?.push({ column: placing[c]?.[j] ?? -1, placing: each });
    });
  });
  problem.modules.forEach(({ module, patterns }, m) => {
    const u = pattern[m] ?? [];
    const here = onModule[m] ?? [];
    draft.row(
      `does ${module}`,
      `module ${module}`,
      1,
      1,
      u.map((column) => [column, 1]),
    );
    const atMost = (name: string, take: (each: Placing) => number, give: (p: number) => number): void => {
      const taken = here.flatMap((each): Term[] =>
        take(each.placing) === 0 ? [] : [[each.column, take(each.placing)]],
      );
      // A row that no choice can break is left out.
      const most = taken.reduce((sum, [, coefficient]) => sum + Math.max(0, coefficient), 0);
      if (most === 0 || patterns.every((_, p) => give(p) >= most)) return;
      draft.row(`${name} ${module}`, `${name} ${module}`, -NO_END, 0, [
        ...taken,
        ...u.map((column, p): Term => [column, -give(p)]),
      ]);
    };
    atMost(
      "dimmable",
      (each) => Number(each.takesDimmable),
      (p) => patterns[p]?.dimmable ?? 0,
    );
    atMost(
      "switchable",
      (each) => Number(each.takesSwitchable),
      (p) => patterns[p]?.switchable ?? 0,
    );
    atMost(
      "channels",
      () => 1,
      (p) => patterns[p]?.slots ?? 0,
    );
    atMost(
      "rating",
      (each) => milliamps(each.currentA),
      (p) => milliamps(patterns[p]?.mostA ?? 0),
    );
  });
  for (const feeder of problem.feeders) {
    const terms: Term[] = [];
    problem.circuits.forEach((circuit, c) => {
      circuit.placings.forEach((each, j) => {
        const sits = each.module !== undefined && feeder.modules.includes(each.module) ? each.currentA : 0;
        const currentA = sits + (feeder.modules.includes(circuit.home) ? each.steadyA : 0);
        if (currentA > 0) terms.push([placing[c]?.[j] ?? -1, milliamps(currentA)]);
      });
    });
    if (terms.length > 0)
      draft.row(`feeder ${feeder.id}`, `feeder ${feeder.id}`, -NO_END, milliamps(feeder.mostA), terms);
  }
}

/** A place is opened where anything in it is worked on. */
export function placeRows(
  draft: Draft,
  problem: MovesProblem,
  pattern: number[][],
  placing: number[][],
  opened: number[],
): void {
  problem.places.forEach((place, k) => {
    const name = place.place ?? "isolation";
    const open = opened[k] ?? -1;
    problem.modules.forEach(({ module, places, patterns }, m) => {
      if (!places.includes(k)) return;
      const touching = patterns.flatMap((each, p): Term[] => (each.isTouched ? [[pattern[m]?.[p] ?? -1, 1]] : []));
      if (touching.length > 0)
        draft.row(`opens ${name} ${module}`, `place ${name}`, -NO_END, 0, [...touching, [open, -1]]);
    });
    problem.circuits.forEach((circuit, c) => {
      const opening = circuit.placings.flatMap((each, j): Term[] =>
        placesOpenedBy(problem, c, each).has(k) ? [[placing[c]?.[j] ?? -1, 1]] : [],
      );
      if (opening.length > 0)
        draft.row(`opens ${name} ${circuit.circuit}`, `place ${name}`, -NO_END, 0, [...opening, [open, -1]]);
    });
  });
}

/** What is fitted is bought, in stock, or freed by the same plan. */
export function partRows(draft: Draft, problem: MovesProblem, pattern: number[][], bought: number[]): void {
  problem.parts.forEach((part, k) => {
    const terms: Term[] = [[bought[k] ?? -1, -1]];
    problem.modules.forEach(({ patterns }, m) => {
      patterns.forEach((each, p) => {
        const net = Number(each.part === k) - Number(each.frees === k);
        if (net !== 0) terms.push([pattern[m]?.[p] ?? -1, net]);
      });
    });
    draft.row(`stock ${part.kind}`, `stock ${part.kind}`, -NO_END, part.inStock, terms);
  });
}
