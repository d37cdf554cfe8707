import type { MovePattern, MovesProblem, Placing } from "./problem.js";

/** Sitting as `a` is no worse than sitting as `b`, whatever the rest of the plan does. */
const sitsNoWorse = (a: Placing, b: Placing): boolean =>
  a.isMoved === b.isMoved &&
  a.value >= b.value &&
  a.cost <= b.cost &&
  a.minutes <= b.minutes &&
  a.wiresMoved <= b.wiresMoved &&
  a.currentA <= b.currentA &&
  a.steadyA <= b.steadyA &&
  Number(a.takesDimmable) <= Number(b.takesDimmable) &&
  Number(a.takesSwitchable) <= Number(b.takesSwitchable);

/** No dearer in money, minutes and parts, and no narrower for anything that may sit there. */
const asGood = (a: MovePattern, b: MovePattern): boolean =>
  a.cost <= b.cost &&
  a.minutes <= b.minutes &&
  Number(a.isTouched) <= Number(b.isTouched) &&
  (a.part === undefined || a.part === b.part) &&
  (b.frees === undefined || a.frees === b.frees) &&
  a.value >= b.value &&
  a.slots >= b.slots &&
  a.dimmable >= b.dimmable &&
  a.switchable >= b.switchable &&
  a.mostA >= b.mostA;

/**
 * For each module, which patterns another can stand in for in every plan: no dearer, worth no less, as many channels of each mode, as much current,
 * and each circuit may sit under it in a way no worse. Of two that stand in for each other the first stays.
 */
export function dominatedPatterns(problem: Pick<MovesProblem, "modules" | "circuits">): ReadonlySet<number>[] {
  const byModule: Placing[][][] = problem.modules.map(() => []);
  for (const circuit of problem.circuits)
    problem.modules.forEach((_, m) => {
      const here = circuit.placings.filter((placing) => placing.module === m);
      if (here.length > 0) byModule[m]?.push(here);
    });
  return problem.modules.map(({ patterns }, m) => {
    const gone = new Set<number>();
    const standsIn = (p: number, q: number): boolean =>
      asGood(patterns[p] as MovePattern, patterns[q] as MovePattern) &&
      (byModule[m] ?? []).every((placings) =>
        placings.every(
          (b) =>
            !b.patterns.includes(q) ||
            b.patterns.includes(p) ||
            placings.some((a) => a.patterns.includes(p) && sitsNoWorse(a, b)),
        ),
      );
    patterns.forEach((_, q) => {
      const better = patterns.findIndex(
        (_each, p) => p !== q && !gone.has(p) && standsIn(p, q) && (p < q || !standsIn(q, p)),
      );
      if (better >= 0) gone.add(q);
    });
    return gone;
  });
}
