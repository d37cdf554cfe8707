import { type CoachSpans, type LoadModel, loadCurrentA, spanCoach } from "../network/index.js";
import { figureValue, type Outcome, type Span, spanOf } from "../quantity/index.js";
import type { BankGroup } from "./bank-groups.js";
import type { MeanNetwork } from "./mean-network.js";
import { dutiesOf, type SpanUse } from "./profile-circuits.js";
import type { RestVolts } from "./rest-volts.js";

/** What a group's loads may draw within one stretch of charge, A, charger and sun not counted. */
export interface CellBounds {
  readonly draw: Span;
  /** The most that chargers and the alternator may give. */
  readonly helpersMostA: number;
}

/** A blade fuse carries up to this share of its rating for ten minutes and more (memory); a fuse that is not known is taken as the largest blade. */
const FUSE_HOLDS_RATIO = 1.35;
const LARGEST_BLADE_A = 40;
/** A load whose way is not known is taken to get at least this share of the nominal volts, as in the network (common practice, no source). */
const LEAST_VOLTS_RATIO = 0.75;

/** The least and most a load draws at any volts from `loV` to `hiV`, between its two bounding models. */
export function currentBetween(least: LoadModel, most: LoadModel, loV: number, hiV: number): Span {
  if (least.kind === "power" && most.kind === "power")
    return {
      lo: loV >= least.dropOutV ? least.powerW / Math.max(hiV, least.dropOutV) : 0,
      hi: hiV >= 0.99 * most.dropOutV ? most.powerW / Math.max(loV, most.dropOutV) : 0,
    };
  return { lo: Math.max(0, loadCurrentA(least, loV)), hi: Math.max(0, loadCurrentA(most, hiV)) };
}

/**
 * Bounds on what each group of batteries gives in one span of a profile, by stretch of charge. Guaranteed over the record's figures, whichever of the
 * circuits are on together at any moment: the volts of a load lie between those with all of them on at the lower end of the stretch (`spanCoach`) and
 * the highest supply volts at its upper end. Undefined where the network gives no bound.
 */
export class DrawBounds {
  private readonly cells = new Map<number, readonly (CellBounds | undefined)[]>();

  constructor(
    private readonly network: MeanNetwork,
    private readonly use: SpanUse,
    private readonly groups: readonly BankGroup[],
    private readonly rest: RestVolts,
    private readonly bends: readonly number[],
  ) {}

  /** The network's spans at the lower end of a stretch of charge; kept, since several stretches may share them. */
  private readonly spans = new Map<number, Outcome<CoachSpans>>();

  /**
   * Bounds of a group between the charges `bends[cell - 1]` and `bends[cell]`. With `lowest`, a bend no higher than that, the volts at their lowest are
   * those at it: wider, and one solve for all stretches.
   */
  at(cell: number, group: number, lowest = cell - 1): CellBounds | undefined {
    const kept = this.cells.get(cell) ?? this.boundsOf(cell, Math.min(lowest, cell - 1));
    this.cells.set(cell, kept);
    return kept[group];
  }

  private spansAt(bend: number): Outcome<CoachSpans> {
    const kept = this.spans.get(bend);
    if (kept !== undefined) return kept;
    const { chargerOn, engineOn } = this.use;
    const made = spanCoach(this.network.coach.index, {
      name: this.use.name,
      on: new Set(this.use.circuits.keys()),
      dutyRatio: dutiesOf(this.use),
      chargerOn,
      engineOn,
      chargeRatio: this.bends[bend]!,
    });
    this.spans.set(bend, made);
    return made;
  }

  private boundsOf(cell: number, lowest: number): (CellBounds | undefined)[] {
    const { coach } = this.network;
    const { nominalV } = coach;
    const spans = this.spansAt(lowest);
    if (spans.kind !== "known") return this.groups.map(() => undefined);
    const rest = this.rest.at(this.bends[cell]!);
    const helpers = coach.supplies.filter((one) => one.load >= 0);
    const mostOf = (bound: LoadModel): { setV: number; maxA: number } =>
      bound.kind === "regulated" ? bound : { setV: 0, maxA: 0 };
    const givers = helpers.map((one) => ({ id: one.supply.id, ...mostOf(coach.loadBounds[one.load]!.least) }));
    const hiV = Math.max(...[...rest.values()].map((one) => one.hiV), ...givers.map((one) => one.setV));
    const drawOf = (k: number, loV: number): Span => {
      const { least, most } = coach.loadBounds[k]!;
      return currentBetween(least, most, Math.min(loV, hiV), hiV);
    };
    return this.groups.map((group) => {
      let lo = 0;
      let hi = 0;
      for (const wiring of coach.circuits) {
        if (!group.circuits.has(wiring.circuit.id)) continue;
        const use = this.use.circuits.get(wiring.circuit.id)!;
        const meanRatio = use.shareRatio * use.dutyRatio;
        for (const load of wiring.loads) {
          if (load.networkLoad < 0) continue;
          const found = spans.value.loads.get(load.load.id);
          const leastV = found?.kind === "known" ? found.value.onV.span.lo : LEAST_VOLTS_RATIO * nominalV;
          const draw = drawOf(load.networkLoad, wiring.isCutOff ? 0 : leastV);
          lo += meanRatio * (wiring.isCutOff ? 0 : draw.lo);
          hi += meanRatio * draw.hi;
        }
        if (wiring.currentNeeds.length > 0) {
          const { ratedA } = wiring.circuit.fuse ?? {};
          hi +=
            meanRatio *
            (ratedA === undefined ? LARGEST_BLADE_A : FUSE_HOLDS_RATIO * spanOf(figureValue(ratedA), "rating").hi);
        }
      }
      for (const { module, quiescentLoad } of coach.modules) {
        if (!group.modules.has(module.id)) continue;
        const draw = drawOf(quiescentLoad, LEAST_VOLTS_RATIO * nominalV);
        lo += draw.lo;
        hi += draw.hi;
      }
      return {
        draw: { lo, hi },
        helpersMostA: givers.filter((one) => group.helpers.has(one.id)).reduce((sum, one) => sum + one.maxA, 0),
      };
    });
  }
}
