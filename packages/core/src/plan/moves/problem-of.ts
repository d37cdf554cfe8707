import type { CoachIndex, FullPolicy, ModuleKindId } from "../../record/index.js";
import { isPriced, stockOf } from "../candidate.js";
import type { Demand } from "../demand.js";
import { wholeMinutes } from "../labour.js";
import { centsOf, isolationPlaces, type Money, moneyOf, placesTo } from "../merge.js";
import type { PlanFault } from "../plan.js";
import { dominatedPatterns } from "./dominance.js";
import { feederLimits } from "./feeder-limits.js";
import { type Basis, type Ground, groundOf } from "./ground.js";
import { type GroundPattern, patternsOf } from "./patterns-of.js";
import { placingsOf, reachOf, type Site } from "./placings-of.js";
import type { MoveCircuit, MoveModule, MovePart, MovePattern, MovePlace, MovesProblem } from "./problem.js";
import { restricted } from "./restrict.js";
import { KindChecks } from "./sittings.js";

/** A problem that was read from a record, with what is needed to make plans of its choices. */
export interface RecordProblem extends MovesProblem {
  readonly source: {
    readonly basis: Basis;
    readonly money: Money;
    readonly grounds: readonly Ground[];
    /** What each pattern of `modules` stands for. */
    readonly patterns: readonly (readonly GroundPattern[])[];
    readonly checks: KindChecks;
  };
  /** Choices made beforehand that nothing in this record can meet, by path; they are left out. */
  readonly faults: readonly PlanFault[];
}

/** Kinds of which a plan could take one out: not dead, not locked, not ruled out. */
function freedKinds(index: CoachIndex, demand: Demand): Set<ModuleKindId> {
  const kinds = new Set<ModuleKindId>();
  if (demand.ruledOut.has("reuse")) return kinds;
  for (const module of index.modules.values())
    if (
      module.kind !== undefined &&
      module.isDead !== true &&
      module.isLocked !== true &&
      !demand.locked.has(module.id)
    )
      kinds.add(module.kind);
  return kinds;
}

function partsOf(basis: Basis, patterns: readonly (readonly GroundPattern[])[]): MovePart[] {
  const fitted = new Set(patterns.flat().flatMap(({ pattern }) => (pattern.isReplaced ? [pattern.kind] : [])));
  return [...basis.index.moduleKinds.values()]
    .filter((kind) => fitted.has(kind.id) && (stockOf(kind) > 0 || basis.freed.has(kind.id)))
    .map((kind) => ({
      kind: kind.id,
      inStock: stockOf(kind),
      price:
        kind.isObtainable === false || (kind.price === undefined && isPriced(basis.index))
          ? Number.POSITIVE_INFINITY
          : 60 * centsOf(kind.price),
    }));
}

function placesOf(index: CoachIndex, money: Money): MovePlace[] {
  const minutesOf = (place: string): number => wholeMinutes(index.places.get(place)?.accessMin);
  const always = isolationPlaces(index);
  const minutes = always.reduce((sum, place) => sum + minutesOf(place), 0);
  const places: MovePlace[] =
    minutes > 0 ? [{ place: undefined, minutes, cost: minutes * money.rateCentsPerHour }] : [];
  for (const place of index.places.values()) {
    const own = minutesOf(place.id);
    if (own > 0 && !always.includes(place.id))
      places.push({ place: place.id, minutes: own, cost: own * money.rateCentsPerHour });
  }
  return places;
}

const gcd = (a: number, b: number): number => (b === 0 ? Math.abs(a) : gcd(b, a % b));
const unitOf = (amounts: Iterable<number>): number => {
  let unit = 0;
  for (const amount of amounts) if (Number.isFinite(amount)) unit = gcd(unit, amount);
  return unit === 0 ? 1 : unit;
};

function priced(
  basis: Basis,
  money: Money,
  parts: readonly MovePart[],
  ground: Ground,
  at: GroundPattern,
): MovePattern {
  const { pattern, kind } = at;
  const part = pattern.isReplaced ? parts.findIndex((each) => each.kind === kind?.id) : -1;
  const frees =
    pattern.isReplaced && !ground.isDead && basis.freed.has(ground.present?.id ?? "")
      ? parts.findIndex((each) => each.kind === ground.present?.id)
      : -1;
  const price = pattern.isReplaced && part < 0 ? 60 * centsOf(kind?.price) : 0;
  return {
    ...pattern,
    cost: price + pattern.minutes * money.rateCentsPerHour,
    part: part < 0 ? undefined : part,
    frees: frees < 0 ? undefined : frees,
  };
}

/** A dead module may stay where nothing else can be fitted with everything staying on its channel. */
function mayStayDead(problem: Pick<MovesProblem, "circuits">, module: MoveModule, order: number): boolean {
  const own = problem.circuits.filter((circuit) => circuit.home === order);
  return !module.patterns.some(
    (pattern, p) =>
      pattern.isReplaced &&
      own.every((circuit) =>
        circuit.placings.some(
          (placing) => placing.module === order && placing.wiresMoved === 0 && placing.patterns.includes(p),
        ),
      ) &&
      own.reduce((sum, circuit) => sum + (circuit.placings[0]?.currentA ?? 0), 0) <= pattern.mostA + 5e-7,
  );
}

/** The problem with some patterns of each module left out. */
function without(
  modules: readonly MoveModule[],
  circuits: readonly MoveCircuit[],
  gone: readonly ReadonlySet<number>[],
) {
  const renamed = modules.map(({ patterns }, m) => {
    const to = new Map<number, number>();
    patterns.forEach((_, p) => {
      if (gone[m]?.has(p) !== true) to.set(p, to.size);
    });
    return to;
  });
  return {
    modules: modules.map((module, m) => ({
      ...module,
      patterns: module.patterns.filter((_, p) => gone[m]?.has(p) !== true),
    })),
    circuits: circuits.map((circuit) => ({
      ...circuit,
      placings: circuit.placings
        .map((placing) => ({
          ...placing,
          patterns: placing.patterns.flatMap((p) =>
            placing.module === undefined ? [] : (renamed[placing.module]?.get(p) ?? []),
          ),
        }))
        .filter((placing) => placing.module === undefined || placing.patterns.length > 0),
    })),
  };
}

/**
 * What may be decided about this coach, and under which rules? Every module kept, set anew or replaced; every circuit that may move, be relieved of a load that must
 * not dim, or get a thicker wire. `keeps.dominated`: patterns that another stands in for stay too, for questions about one wish rather than the sum of all. `policy`: of the record (`policyOf`); `demand`: of the job (`demandOf`). See docs/method/plan.md, *With moves*.
 */
export function movesProblemOf(
  index: CoachIndex,
  policy: FullPolicy,
  demand: Demand,
  keeps: { readonly dominated?: boolean } = {},
): RecordProblem {
  const basis: Basis = { index, policy, demand, freed: freedKinds(index, demand) };
  const money = moneyOf(index, policy, demand.maxMinutes !== undefined);
  const grounds = [...index.modules.values()].map((module, order) => groundOf(basis, module, order));
  const patterns = grounds.map((ground) => patternsOf(basis, ground));
  const parts = partsOf(basis, patterns);
  const places = placesOf(index, money);
  const checks = new KindChecks(basis);
  const site: Site = { basis, grounds, patterns, checks, rateCentsPerHour: money.rateCentsPerHour };
  const always = new Set<string>(isolationPlaces(index));
  const modules = grounds.map(
    (ground, m): MoveModule => ({
      module: ground.module.id,
      name: ground.module.name ?? ground.module.id,
      patterns: (patterns[m] ?? []).map((at) => priced(basis, money, parts, ground, at)),
      places: places.flatMap((each, k) =>
        each.place === undefined ||
        (!always.has(each.place) && placesTo(index, ground.module.place).includes(each.place))
          ? [k]
          : [],
      ),
    }),
  );
  const circuits = grounds.flatMap((ground) =>
    ground.circuits.map(
      (each): MoveCircuit => ({
        circuit: each.on.circuit.id,
        name: each.on.circuit.name ?? each.on.circuit.label ?? each.on.circuit.id,
        home: ground.order,
        channel: each.on.channel,
        reach: reachOf(site, ground, each),
        placings: placingsOf(site, ground, each),
      }),
    ),
  );
  const dead = modules.map((module, m) =>
    grounds[m]?.isDead === true && module.patterns.length > 1 && !mayStayDead({ circuits }, module, m)
      ? new Set([0])
      : new Set<number>(),
  );
  const choices = restricted(demand, modules, circuits, dead);
  const first = without(modules, choices.circuits, choices.gone);
  const kept = first.modules.map((module, m) =>
    (patterns[m] ?? []).filter((at) => module.patterns.some((p) => p.key === at.pattern.key)),
  );
  const dominated = keeps.dominated === true ? first.modules.map(() => new Set<number>()) : dominatedPatterns(first);
  const last = without(first.modules, first.circuits, dominated);
  const costs = function* () {
    for (const module of last.modules) for (const pattern of module.patterns) yield pattern.cost;
    for (const circuit of last.circuits) for (const placing of circuit.placings) yield placing.cost;
    for (const place of places) yield place.cost;
    for (const part of parts) yield part.price;
  };
  const values = function* () {
    for (const module of last.modules) for (const pattern of module.patterns) yield pattern.value;
    for (const circuit of last.circuits) for (const placing of circuit.placings) yield placing.value;
  };
  return {
    name: index.record.id,
    ...last,
    parts,
    places,
    feeders: feederLimits(basis, grounds, circuits),
    costOfMinute: money.rateCentsPerHour,
    mostCost: demand.budgetCents === undefined ? undefined : demand.budgetCents * 60 + 29,
    mostMinutes: demand.maxMinutes,
    costUnit: unitOf(costs()),
    valueUnit: unitOf(values()),
    faults: choices.faults,
    source: {
      basis,
      money,
      grounds,
      patterns: last.modules.map((module, m) =>
        module.patterns.flatMap((pattern) => kept[m]?.find((at) => at.pattern.key === pattern.key) ?? []),
      ),
      checks,
    },
  };
}
