import type { Plan } from "../plan/index.js";
import { figureValue, showQuantity } from "../quantity/index.js";
import { type CoachIndex, type ModuleId, type ModuleKindId, policyOf } from "../record/index.js";

/** One line of the parts list. A part from stock, or taken out of another position, costs nothing in this job. */
export interface PartLine {
  readonly what: string;
  readonly quantity: number;
  readonly partNumber?: string;
  /** Whole minor units, tax not in it; absent where the record has no price. */
  readonly eachCents?: number;
  readonly fromStock: boolean;
  /** Comes out of another position in the same job. */
  readonly isReused?: boolean;
  readonly kind?: ModuleKindId;
}

const centsOf = (amount: number): number => Math.round(amount * 100);

interface Wanted {
  readonly kind: ModuleKindId;
  readonly count: number;
  readonly stocked: number;
  /** Working ones of this kind that the same plan takes out. */
  readonly freed: number;
  readonly eachCents: number | undefined;
}

function wantedOf(plan: Plan, index: CoachIndex): Wanted[] {
  const counts = new Map<ModuleKindId, number>();
  const freed = new Map<ModuleKindId, number>();
  for (const choice of plan.modules) {
    if (!choice.isTouched || !choice.isReplaced) continue;
    counts.set(choice.to, (counts.get(choice.to) ?? 0) + 1);
    if (choice.from !== undefined && index.modules.get(choice.module)?.isDead !== true)
      freed.set(choice.from, (freed.get(choice.from) ?? 0) + 1);
  }
  return [...counts].map(([id, count]) => {
    const kind = index.moduleKinds.get(id);
    const stocked = Math.min(count, kind?.inStock ?? 0);
    return {
      kind: id,
      count,
      stocked,
      freed: Math.min(count - stocked, freed.get(id) ?? 0),
      eachCents: kind?.price === undefined ? undefined : centsOf(kind.price),
    };
  });
}

/** Holder, fuse and wire of the feeds of their own, and wire by the metre, as the plan prices them. */
function wireLines(plan: Plan, index: CoachIndex): PartLine[] {
  const policy = policyOf(index.record);
  const feeds: PartLine[] = plan.steadyFeeds.map((feed) => ({
    what: `Holder, ${feed.fuseA} A fuse and wire for a feed of its own: ${index.loads.get(feed.load)?.name ?? feed.load}`,
    quantity: 1,
    ...(policy.steadyFeedParts === undefined ? {} : { eachCents: centsOf(policy.steadyFeedParts) }),
    fromStock: false,
  }));
  const rewires = plan.rewires.map((rewire): PartLine => {
    const figure = index.circuits.get(rewire.circuit)?.out?.lengthM;
    const lengthM = figure === undefined ? undefined : figureValue(figure);
    const long = lengthM === undefined ? "length not on record" : showQuantity(lengthM, "length", policy.unitsShown);
    return {
      what: `Wire ${rewire.toGauge}, ${long}, with contacts: ${index.circuits.get(rewire.circuit)?.name ?? rewire.circuit}`,
      quantity: 1,
      ...(policy.rewirePartsPerM === undefined || lengthM === undefined
        ? {}
        : { eachCents: centsOf(policy.rewirePartsPerM * lengthM) }),
      fromStock: false,
    };
  });
  return [...feeds, ...rewires];
}

const sum = (amounts: readonly number[]): number => amounts.reduce((total, each) => total + each, 0);

/** Did the plan count modules that it takes out as parts for other positions? Its own money says so. */
function reuses(plan: Plan, wanted: readonly Wanted[], wires: readonly PartLine[]): boolean {
  const bought = (isReused: boolean): number =>
    sum(wanted.map((each) => (each.count - each.stocked - (isReused ? each.freed : 0)) * (each.eachCents ?? 0)));
  const rest = plan.partsCents - sum(wires.map((line) => line.eachCents ?? 0));
  return bought(true) === rest && bought(false) !== rest;
}

/** A module that is taken out of one position and fitted at another in the same job. */
export interface Reuse {
  readonly from: ModuleId;
  readonly at: ModuleId;
}

/** Which modules are used again, and where: the last positions that get such a kind take those that come out, in the order of the plan. Never into the position it came from. */
export function reusesOf(plan: Plan, index: CoachIndex): Reuse[] {
  const wanted = wantedOf(plan, index);
  if (!reuses(plan, wanted, wireLines(plan, index))) return [];
  return wanted.flatMap(({ kind, freed }) => {
    const takers = plan.modules.filter((choice) => choice.isReplaced && choice.to === kind).slice(-freed);
    const givers = plan.modules.filter(
      (choice) => choice.isReplaced && choice.from === kind && index.modules.get(choice.module)?.isDead !== true,
    );
    return freed === 0
      ? []
      : takers.map((taker, i): Reuse => ({ at: taker.module, from: (givers[i] ?? taker).module }));
  });
}

/** What must lie ready: the modules to fit, those on hand first, then those that come out elsewhere; parts of moved wires; the fuses that change. `index`: the coach as found. */
export function partsListOf(plan: Plan, index: CoachIndex): PartLine[] {
  const wanted = wantedOf(plan, index);
  const wires = wireLines(plan, index);
  const isReusing = reuses(plan, wanted, wires);
  const lines: PartLine[] = [];
  for (const { kind: id, count, stocked, freed, eachCents } of wanted) {
    const kind = index.moduleKinds.get(id);
    const what = kind?.name ?? id;
    const number = kind?.partNumber === undefined ? {} : { partNumber: kind.partNumber };
    const reused = isReusing ? freed : 0;
    const line = (quantity: number, more: Pick<PartLine, "fromStock" | "isReused" | "eachCents">): void => {
      if (quantity > 0) lines.push({ what, quantity, ...number, ...more, kind: id });
    };
    line(stocked, { fromStock: true });
    line(reused, { fromStock: false, isReused: true });
    line(count - stocked - reused, { fromStock: false, ...(eachCents === undefined ? {} : { eachCents }) });
  }
  lines.push(...wires);
  const fuses = new Map<string, number>();
  for (const change of plan.fuses) {
    const circuit = index.circuits.get(change.circuit);
    const moved = plan.moves.find((move) => move.circuit === change.circuit)?.to.module;
    const choice = plan.modules.find((one) => one.module === (moved ?? circuit?.module));
    const isOther = choice !== undefined && (choice.isReplaced || moved !== undefined);
    const type =
      (isOther ? index.moduleKinds.get(choice.to)?.fuseType : undefined) ?? circuit?.fuse?.type ?? "type not on record";
    const what = `Fuse ${change.toA} A, ${type}`;
    fuses.set(what, (fuses.get(what) ?? 0) + 1);
  }
  for (const [what, quantity] of fuses) lines.push({ what, quantity, fromStock: false });
  return lines;
}
