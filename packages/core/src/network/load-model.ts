import { Arena } from "./arena.js";

/**
 * What one load draws at the volts across it. Figures are for all pieces of the load together.
 * Every model but `power` never draws less as the volts rise; `power` does, above its drop-out.
 */
export type LoadModel =
  | { readonly kind: "resistance"; readonly resistanceOhm: number }
  /** The same current from `kneeV` up; below it falls straight to nothing at 0 V. */
  | { readonly kind: "current"; readonly currentA: number; readonly kneeV: number }
  /** The same power down to `dropOutV`; from there it goes out within the last hundredth of that. */
  | { readonly kind: "power"; readonly powerW: number; readonly dropOutV: number }
  /** Strings with a resistor: nothing below the forward voltage. From `bendV` up, where given, the slope is that of `aboveOhm` instead. */
  | {
      readonly kind: "led";
      readonly forwardV: number;
      readonly resistanceOhm: number;
      readonly bendV?: number;
      readonly aboveOhm?: number;
    }
  /** Filament: current goes with V to the power 0.55; straight below a twentieth of the rated volts. */
  | { readonly kind: "filament"; readonly currentA: number; readonly ratedV: number }
  /** Running at constant torque draws one current; once the volts cannot drive that through the winding it stalls and is a resistance. */
  | { readonly kind: "motor"; readonly runningA: number; readonly stallOhm: number }
  /** Charger, alternator, solar: holds `setV` through `outputOhm` up to `maxA`, and never takes current back. Its draw is negative. */
  | { readonly kind: "regulated"; readonly setV: number; readonly outputOhm: number; readonly maxA: number };

export type LoadModelKind = LoadModel["kind"];

/** Exponent of filament current on volts, Standard Handbook for Electrical Engineers, 11th ed., p. 22-8 (seen, through an encyclopaedia). */
export const FILAMENT_CURRENT_EXPONENT = 0.55;
/** The part of the drop-out voltage over which a constant-power load goes out. Ours: a jump has no slope to solve with. */
export const DROP_OUT_RAMP_RATIO = 0.01;
/** The part of the rated volts below which a filament is taken as a resistance. Ours: its power law has no slope at 0 V. */
export const FILAMENT_STRAIGHT_RATIO = 0.05;

/** Load models flattened into typed arrays, so that a solve allocates nothing. `currentAt` leaves the slope in `slopeS`. */
export class LoadTable {
  private readonly kind: Uint8Array;
  private readonly a: Float64Array;
  private readonly b: Float64Array;
  private readonly c: Float64Array;
  private readonly d: Float64Array;
  /** By filament: its own volts when its wire was last looked through. */
  private readonly behind: Float64Array;
  /** Amperes, and slope dI/dV in siemens, of the last look. */
  currentA = 0.5;
  slopeS = 0.5;
  /** Where the next look is at: volts, and a resistance before the load. */
  atV = 0.5;
  seriesOhm = 0.5;

  constructor(loads: readonly { readonly model: LoadModel }[], arena = new Arena()) {
    this.kind = arena.u8(loads.length);
    this.a = arena.f64(loads.length);
    this.b = arena.f64(loads.length);
    this.c = arena.f64(loads.length);
    this.d = arena.f64(loads.length);
    this.behind = arena.f64(loads.length);
    for (let k = 0; k < loads.length; k++) this.put(k, loads[k]!.model);
  }

  /** Replaces one model. */
  put(k: number, model: LoadModel): void {
    switch (model.kind) {
      case "resistance":
        this.putResistance(k, model.resistanceOhm);
        return;
      case "current":
        this.putCurrent(k, model.currentA, model.kneeV);
        return;
      case "power":
        this.putPower(k, model.powerW, model.dropOutV);
        return;
      case "led":
        this.putLed(k, model.forwardV, model.resistanceOhm);
        this.c[k] = model.bendV ?? Number.POSITIVE_INFINITY;
        this.d[k] = 1 / (model.aboveOhm ?? model.resistanceOhm);
        return;
      case "filament":
        this.putFilament(k, model.currentA, model.ratedV);
        return;
      case "motor":
        this.putMotor(k, model.runningA, model.stallOhm);
        return;
      case "regulated":
        this.putRegulated(k, model.setV, model.outputOhm, model.maxA);
        return;
    }
  }

  putResistance(k: number, resistanceOhm: number): void {
    this.kind[k] = 0;
    this.a[k] = 1 / resistanceOhm;
  }

  putCurrent(k: number, currentA: number, kneeV: number): void {
    this.kind[k] = 1;
    this.a[k] = currentA;
    this.b[k] = kneeV;
  }

  putPower(k: number, powerW: number, dropOutV: number): void {
    this.kind[k] = 2;
    this.a[k] = powerW;
    this.b[k] = dropOutV;
  }

  /** Without a bend. */
  putLed(k: number, forwardV: number, resistanceOhm: number): void {
    this.kind[k] = 3;
    this.a[k] = forwardV;
    this.b[k] = 1 / resistanceOhm;
    this.c[k] = Number.POSITIVE_INFINITY;
    this.d[k] = 1 / resistanceOhm;
  }

  putFilament(k: number, currentA: number, ratedV: number): void {
    const straightV = FILAMENT_STRAIGHT_RATIO * ratedV;
    // The two powers are the same for as long as the rated volts are.
    if (this.kind[k] !== 4 || this.b[k] !== straightV) {
      this.kind[k] = 4;
      this.b[k] = straightV;
      this.d[k] = ratedV ** FILAMENT_CURRENT_EXPONENT;
      this.c[k] = straightV ** (FILAMENT_CURRENT_EXPONENT - 1);
    }
    this.a[k] = currentA / this.d[k]!;
  }

  putMotor(k: number, runningA: number, stallOhm: number): void {
    this.kind[k] = 5;
    this.a[k] = runningA;
    this.b[k] = 1 / stallOhm;
  }

  putRegulated(k: number, setV: number, outputOhm: number, maxA: number): void {
    this.kind[k] = 6;
    this.a[k] = setV;
    this.b[k] = 1 / outputOhm;
    this.c[k] = maxA;
  }

  /** Current in at these volts, A; the slope is left in `slopeS`. */
  currentAt(k: number, v: number): number {
    this.atV = v;
    this.look(k);
    return this.currentA;
  }

  /** Leaves the current in at `atV` in `currentA` and the slope in `slopeS`: handing numbers in and back would make garbage of each. */
  look(k: number): void {
    const v = this.atV;
    const a = this.a[k]!;
    const b = this.b[k]!;
    this.slopeS = 0;
    switch (this.kind[k]) {
      case 0:
        this.slopeS = a;
        this.currentA = a * v;
        return;
      case 1:
        if (v >= b) this.currentA = a;
        else if (v <= 0) this.currentA = 0;
        else {
          this.slopeS = a / b;
          this.currentA = (a * v) / b;
        }
        return;
      case 2: {
        if (v >= b) {
          this.slopeS = -a / (v * v);
          this.currentA = a / v;
          return;
        }
        const outV = b * (1 - DROP_OUT_RAMP_RATIO);
        if (v <= outV) {
          this.currentA = 0;
          return;
        }
        this.slopeS = a / b / (b - outV);
        this.currentA = this.slopeS * (v - outV);
        return;
      }
      case 3: {
        if (v <= a) {
          this.currentA = 0;
          return;
        }
        const bendV = this.c[k]!;
        if (v > bendV) {
          this.slopeS = this.d[k]!;
          this.currentA = b * (bendV - a) + this.slopeS * (v - bendV);
          return;
        }
        this.slopeS = b;
        this.currentA = b * (v - a);
        return;
      }
      case 4: {
        const c = a * this.c[k]!;
        const size = v < 0 ? -v : v;
        if (size <= b) {
          this.slopeS = c;
          this.currentA = c * v;
          return;
        }
        const currentA = a * size ** FILAMENT_CURRENT_EXPONENT;
        this.slopeS = (FILAMENT_CURRENT_EXPONENT * currentA) / size;
        this.currentA = v < 0 ? -currentA : currentA;
        return;
      }
      case 5:
        if (b * v >= a) {
          this.currentA = a;
          return;
        }
        this.slopeS = b;
        this.currentA = b * v;
        return;
      default: {
        const currentA = (a - v) * b;
        const maxA = this.c[k]!;
        if (currentA <= 0) this.currentA = 0;
        else if (currentA >= maxA) this.currentA = -maxA;
        else {
          this.slopeS = b;
          this.currentA = -currentA;
        }
      }
    }
  }

  /**
   * Current in at these volts across the load and a resistance in series with it, A; the slope of the pair is left in `slopeS`. A constant-power load
   * takes the upper of its two points; where there is none, it goes out.
   */
  currentThrough(k: number, v: number, seriesOhm: number): number {
    this.atV = v;
    this.seriesOhm = seriesOhm;
    this.lookThrough(k);
    return this.currentA;
  }

  /** The same at `atV` behind `seriesOhm`, left in `currentA` and `slopeS`; `atV` is then the load's own. */
  lookThrough(k: number): void {
    const { seriesOhm } = this;
    if (seriesOhm === 0) {
      this.look(k);
      return;
    }
    if (this.kind[k] === 4) {
      this.filamentThrough(k);
      return;
    }
    this.goBehind(k);
    this.look(k);
    this.slopeS /= 1 + seriesOhm * this.slopeS;
  }

  /** Newton on at + R I(at) = v: rising and hollow from above, so after the first step it comes up from below and cannot pass the root. */
  private filamentThrough(k: number): void {
    const { behind, seriesOhm, atV: v } = this;
    // Where it came to rest last is close, if the wire and the volts are nearly those of before.
    let at = behind[k]! > 0 && v > 0 ? Math.min(behind[k]!, v) : v;
    for (let step = 0; step < 30; step++) {
      this.atV = at;
      this.look(k);
      const by = (at + seriesOhm * this.currentA - v) / (1 + seriesOhm * this.slopeS);
      at -= by;
      // What is left after a step is about its square.
      if (!(Math.abs(by) > 1e-8 * Math.abs(v))) {
        behind[k] = at;
        this.currentA -= this.slopeS * by;
        this.atV = at;
        break;
      }
    }
    this.slopeS /= 1 + seriesOhm * this.slopeS;
  }

  /** Takes `atV` from before the resistance to the volts left for the load itself. */
  private goBehind(k: number): void {
    const { seriesOhm, atV: v } = this;
    const a = this.a[k]!;
    const b = this.b[k]!;
    switch (this.kind[k]) {
      case 0:
        this.atV = v / (1 + seriesOhm * a);
        return;
      case 1: {
        const full = v - seriesOhm * a;
        if (full >= b) {
          this.atV = full;
          return;
        }
        this.atV = v <= 0 ? v : v / (1 + (seriesOhm * a) / b);
        return;
      }
      case 2: {
        const inside = v * v - 4 * seriesOhm * a;
        const upper = inside < 0 ? -1 : (v + Math.sqrt(inside)) / 2;
        if (v > 0 && upper >= b) {
          this.atV = upper;
          return;
        }
        const outV = b * (1 - DROP_OUT_RAMP_RATIO);
        const slope = a / b / (b - outV);
        this.atV = v <= outV ? v : (v + seriesOhm * slope * outV) / (1 + seriesOhm * slope);
        return;
      }
      case 3: {
        if (v <= a) {
          this.atV = v;
          return;
        }
        const bendV = this.c[k]!;
        const below = (v + seriesOhm * b * a) / (1 + seriesOhm * b);
        if (below <= bendV) {
          this.atV = below;
          return;
        }
        const slope = this.d[k]!;
        this.atV = (v - seriesOhm * (b * (bendV - a) - slope * bendV)) / (1 + seriesOhm * slope);
        return;
      }
      case 5: {
        const full = v - seriesOhm * a;
        this.atV = b * full >= a ? full : v / (1 + seriesOhm * b);
        return;
      }
      default: {
        if (v >= a) {
          this.atV = v;
          return;
        }
        const held = (v + seriesOhm * b * a) / (1 + seriesOhm * b);
        const maxA = this.c[k]!;
        this.atV = (a - held) * b <= maxA ? held : v + seriesOhm * maxA;
        return;
      }
    }
  }

  /** True where a constant-power load sits on the ramp below its drop-out: it can neither run nor stay out. */
  isGoingOut(k: number, v: number): boolean {
    const dropOutV = this.b[k]!;
    return this.kind[k] === 2 && this.a[k]! > 0 && v < dropOutV && v > dropOutV * (1 - DROP_OUT_RAMP_RATIO);
  }
}

/** What a load of this model draws at these volts, A. */
export const loadCurrentA = (model: LoadModel, volts: number): number => new LoadTable([{ model }]).currentAt(0, volts);

/** True where the load never draws less as the volts rise. */
export const isMonotone = (model: LoadModel): boolean => model.kind !== "power";
