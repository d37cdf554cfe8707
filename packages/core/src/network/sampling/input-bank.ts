import { drawRatio, keyNumber, sampleNumber } from "./chance.js";
import { drawKeyOf, type UncertainInput } from "./uncertain-input.js";

/** Every figure a network hangs on, in one row of numbers that is drawn afresh for each sample. */
export class InputBank {
  readonly inputs: UncertainInput[] = [];
  private readonly placeOf = new Map<string, number>();
  private keys = new Int32Array(0);
  private lo = new Float64Array(0);
  private width = new Float64Array(0);
  /** By place: the figure as drawn; at first the nominal one. */
  value = new Float64Array(0);

  constructor(private readonly seed: number) {}

  /** The place of a figure; the same figure used twice has one place. */
  add(input: UncertainInput): number {
    const name = `${input.path}#${input.aspect ?? ""}`;
    const found = this.placeOf.get(name);
    if (found !== undefined) return found;
    this.placeOf.set(name, this.inputs.length);
    this.inputs.push(input);
    return this.inputs.length - 1;
  }

  /** To be called once, after the last `add`. */
  close(): void {
    const { inputs } = this;
    this.keys = Int32Array.from(inputs, (one) => keyNumber(drawKeyOf(one)));
    this.lo = Float64Array.from(inputs, (one) => one.span.lo);
    this.width = Float64Array.from(inputs, (one) => one.span.hi - one.span.lo);
    this.value = Float64Array.from(inputs, (one) => one.nominal);
  }

  draw(sample: number): void {
    const { keys, lo, width, value } = this;
    const ofSample = sampleNumber(this.seed, sample);
    for (let n = 0; n < keys.length; n++) {
      const wide = width[n]!;
      if (wide > 0) value[n] = lo[n]! + wide * drawRatio(keys[n]!, ofSample);
    }
  }
}

/** What this input is in one sample: the same number that `sampleCoach` uses there. */
export const drawnValue = (input: UncertainInput, seed: number, sample: number): number =>
  input.span.hi > input.span.lo
    ? input.span.lo +
      (input.span.hi - input.span.lo) * drawRatio(keyNumber(drawKeyOf(input)), sampleNumber(seed, sample))
    : input.nominal;
