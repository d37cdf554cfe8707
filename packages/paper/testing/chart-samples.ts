import * as fc from "fast-check";
import type {
  ChargeData,
  ChartMargin,
  ChartSpan,
  CurvePoint,
  DoubtData,
  FrontData,
  RampData,
  TimeCurrentData,
} from "../src/charts/index.js";

/*
 * Charts as engines might ask for them, from tame to awkward: names of any length and script, many curves or none, spans of nothing and of decades.
 */

const words = fc.oneof(
  fc.constantFrom(
    "10 A blade fuse",
    "Wire, out and back",
    "Galley under",
    'The "long" <run> & its tail',
    "Dead short at the far lamp of the saloon valance, port side, behind the second panel",
    "A".repeat(70),
    "Лампа в салоне",
    "灯 12 V",
    "a/b-c",
  ),
  fc.string({ minLength: 1, maxLength: 40 }).filter((text) => text.trim() !== ""),
);
const labelled = { label: words, note: fc.option(words, { nil: undefined }), isFromMemory: fc.boolean() };
const span = (least: number, most: number): fc.Arbitrary<ChartSpan> =>
  fc
    .tuple(fc.double({ min: least, max: most, noNaN: true }), fc.double({ min: 1, max: 3, noNaN: true }))
    .map(([lo, times]) => ({ lo, hi: Math.min(most, lo * times) }));
const curve = (least: number, most: number): fc.Arbitrary<CurvePoint[]> =>
  fc
    .array(
      fc.tuple(fc.double({ min: least, max: most, noNaN: true }), fc.double({ min: 1e-4, max: 2000, noNaN: true })),
      {
        minLength: 2,
        maxLength: 12,
      },
    )
    .map((points) => points.sort((a, b) => b[1] - a[1]));
const margin = fc.constantFrom<ChartMargin>("ample", "tight", "fails", "open");
const head = {
  title: words,
  subtitle: fc.option(words, { nil: undefined }),
  caption: fc.array(words, { maxLength: 2 }),
};

export const timeCurrentData = fc.record({
  ...head,
  fuses: fc.array(fc.record({ ...labelled, fastest: curve(1, 900), slowest: curve(1, 900) }), {
    minLength: 1,
    maxLength: 4,
  }),
  load: fc.option(fc.record({ ...labelled, currentA: span(0.05, 40) }), { nil: undefined }),
  inrushes: fc.array(fc.record({ ...labelled, points: curve(0.1, 200) }), { maxLength: 3 }),
  conductors: fc.array(fc.record({ ...labelled, points: curve(0.5, 20_000), margin }), { maxLength: 5 }),
  prospective: fc.option(fc.record({ ...labelled, currentA: span(1, 5000) }), { nil: undefined }),
  opening: fc.option(fc.record({ ...labelled, currentA: span(1, 5000), timeS: span(0.001, 600) }), { nil: undefined }),
}) as fc.Arbitrary<TimeCurrentData>;

const run = fc
  .record({
    ...labelled,
    hours: fc.double({ min: 0.2, max: 400, noNaN: true }),
    left: fc.double({ min: 0, max: 0.99, noNaN: true }),
    doubt: fc.double({ min: 0, max: 0.5, noNaN: true }),
    reached: fc.boolean(),
  })
  .map(({ hours, left, doubt, reached, ...says }) => {
    const line = (times: number): CurvePoint[] => [
      [0, 1],
      [(hours * times) / 2, (1 + left) / 2],
      [hours * times, left],
    ];
    return {
      ...says,
      points: line(1),
      band: { low: line(1 - doubt), high: line(1 + doubt) },
      hoursToReserve: reached ? { lo: (hours * (1 - doubt)) / 2, hi: (hours * (1 + doubt)) / 2 } : undefined,
    };
  });
export const chargeData = fc.record({
  ...head,
  runs: fc.array(run, { minLength: 1, maxLength: 3 }),
  reserve: fc.record({ ...labelled, chargeRatio: fc.double({ min: 0, max: 1, noNaN: true }) }),
}) as fc.Arbitrary<ChargeData>;

const ramp = fc
  .record({ ...labelled, count: fc.integer({ min: 1, max: 64 }), power: fc.double({ min: 0.3, max: 4, noNaN: true }) })
  .map(({ count, power, ...says }) => ({
    ...says,
    steps: Array.from({ length: count + 1 }, (_, step) => ({
      step,
      dutyRatio: (step / count) ** power,
      lightness: 100 * (step / count) ** (power / 2.4),
    })),
  }));
export const rampData = fc.record({
  ...head,
  ramps: fc.array(ramp, { minLength: 1, maxLength: 3 }),
  lowestUsefulDuty: fc.option(fc.record({ ...labelled, dutyRatio: span(0.0005, 0.6) }), { nil: undefined }),
}) as fc.Arbitrary<RampData>;

export const frontData = fc.record({
  ...head,
  currency: fc.constantFrom("USD", "EUR"),
  points: fc.array(
    fc.record({
      ...labelled,
      cost: fc.double({ min: 0, max: 20_000, noNaN: true }),
      lightsDimmed: fc.integer({ min: 0, max: 90 }),
      wiresMoved: fc.integer({ min: 0, max: 12 }),
      isChosen: fc.boolean(),
    }),
    { minLength: 1, maxLength: 14 },
  ),
}) as fc.Arbitrary<FrontData>;

const quantity = fc
  .record({
    ...labelled,
    unit: fc.constantFrom("V", "A", "%", ""),
    lo: fc.double({ min: -50, max: 500, noNaN: true }),
    steps: fc.array(fc.double({ min: 0, max: 20, noNaN: true }), { minLength: 6, maxLength: 6 }),
    limit: fc.record({
      ...labelled,
      value: fc.double({ min: -20, max: 600, noNaN: true }),
      sense: fc.constantFrom("at most" as const, "at least" as const),
    }),
    failsRatio: fc.double({ min: 0, max: 1, noNaN: true }),
  })
  .map(({ lo, steps, ...rest }) => {
    const at: number[] = [lo];
    for (const step of steps) at.push(at.at(-1)! + step);
    return {
      ...rest,
      exact: { lo, hi: at[6]! },
      quantiles: [0.05, 0.25, 0.5, 0.75, 0.95].map((ratio, i) => ({ ratio, value: at[i + 1]! })),
    };
  });
const reading = fc.record({
  ...labelled,
  minutes: fc.double({ min: 0.5, max: 90, noNaN: true }),
  shrinkRatio: fc.double({ min: 0, max: 1, noNaN: true }),
  shrinkPerMinute: fc.double({ min: 0, max: 1, noNaN: true }),
  settlesRatio: fc.option(fc.double({ min: 0, max: 1, noNaN: true }), { nil: undefined }),
});
export const doubtData = fc.record({
  ...head,
  quantity,
  readings: fc.array(reading, { maxLength: 8 }),
}) as fc.Arbitrary<DoubtData>;
