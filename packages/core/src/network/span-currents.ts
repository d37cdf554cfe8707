import type { Span } from "../quantity/index.js";
import type { LoadBounds } from "./coach-network.js";
import { DROP_OUT_RAMP_RATIO, type LoadModel, LoadTable } from "./load-model.js";

/** What each load may draw while the volts across it lie in an interval: bounds that hold for every model between `least` and `most`. */
export class LoadRanges {
  private readonly least: LoadTable;
  private readonly most: LoadTable;
  readonly lo: Float64Array;
  readonly hi: Float64Array;

  constructor(private readonly bounds: readonly LoadBounds[]) {
    this.least = new LoadTable(bounds.map((one) => ({ model: one.least })));
    this.most = new LoadTable(bounds.map((one) => ({ model: one.most })));
    this.lo = new Float64Array(bounds.length);
    this.hi = new Float64Array(bounds.length);
  }

  /** Leaves the range of load k in `lo[k]` and `hi[k]`. */
  at(k: number, volts: Span): void {
    const { least, most } = this.bounds[k]!;
    if (least.kind === "power" && most.kind === "power") {
      this.lo[k] = volts.lo < least.dropOutV ? 0 : least.powerW / volts.hi;
      this.hi[k] = mostOfPower(most, volts);
      return;
    }
    this.lo[k] = this.least.currentAt(k, volts.lo);
    this.hi[k] = this.most.currentAt(k, volts.hi);
  }
}

const mostOfPower = (most: LoadModel & { kind: "power" }, volts: Span): number =>
  volts.hi <= most.dropOutV * (1 - DROP_OUT_RAMP_RATIO) ? 0 : most.powerW / Math.max(volts.lo, most.dropOutV);
