import { type Figure, figureValue, known, type Outcome, refused, type Span, spanOf } from "../quantity/index.js";
import { CLASS_FIGURES } from "./class-figures.js";
import { type Line, linesThrough, spanOver } from "./line-set.js";

/** A reading with its meters' spans, for one piece. */
export interface SpannedReading {
  readonly voltageV: Span;
  readonly currentA: Span;
  readonly nominalV: number;
  readonly nominalA: number;
}

/** A ballasted LED by its readings, one piece. */
export interface LineFit {
  readonly forwardV: { readonly nominal: number; readonly span: Span };
  readonly resistorOhm: { readonly nominal: number; readonly span: Span };
  /** Corners of all the lines that pass through every reading: what bounds the current at any volts. */
  readonly lines: readonly Line[];
  readonly nominalLine: Line;
  /** `readings`: by them alone; `readings-and-class`: the class's forward volts helped; `readings-and-record`: the record's own did. */
  readonly from: "readings" | "readings-and-class" | "readings-and-record";
}

/** Forward volts stay this far below the least volts at which it was seen to draw. Ours: a line needs some length. */
const MOST_FORWARD_RATIO = 0.95;
const ANY_FORWARD: Span = { lo: 0, hi: Number.POSITIVE_INFINITY };

/** The line of a ballasted LED through all readings, each as wide as its meters; see `fitLamp`. */
export function fitLine(
  readings: readonly SpannedReading[],
  prior: { readonly nominalV: number; readonly forwardV?: Figure | undefined },
): Outcome<LineFit> {
  const leastV = Math.min(...readings.map((each) => each.voltageV.lo));
  const own = prior.forwardV;
  const given = own === undefined ? CLASS_FIGURES.ledForwardRatio : undefined;
  const statedV: Span =
    own !== undefined
      ? spanOf(own, "voltage")
      : { lo: given!.span.lo * prior.nominalV, hi: given!.span.hi * prior.nominalV };
  const priorV: Span = {
    lo: Math.max(0, Math.min(statedV.lo, MOST_FORWARD_RATIO * leastV)),
    hi: Math.min(statedV.hi, MOST_FORWARD_RATIO * leastV),
  };
  const nominalPriorV = Math.min(
    own !== undefined ? figureValue(own) : given!.value * prior.nominalV,
    MOST_FORWARD_RATIO * leastV,
  );
  const isApart = readings.some((a) => readings.some((b) => a.voltageV.hi < b.voltageV.lo));
  if (!isApart) {
    const lines = linesThrough(readings, priorV);
    if (lines.length === 0)
      return refused("readings-apart", "the readings are at the same volts and their amps have nothing in common");
    return known(fitOf(lines, readings, nominalPriorV, own ? "readings-and-record" : "readings-and-class"));
  }
  const alone = linesThrough(readings, ANY_FORWARD);
  if (alone.length === 0) return contradiction(readings);
  const forwardOf = spanOver(alone, forwardVOf);
  if (forwardOf.hi - forwardOf.lo <= priorV.hi - priorV.lo) return known(fitOf(alone, readings, undefined, "readings"));
  const both = linesThrough(readings, priorV);
  return known(
    both.length === 0
      ? fitOf(alone, readings, undefined, "readings")
      : fitOf(both, readings, nominalPriorV, own ? "readings-and-record" : "readings-and-class"),
  );
}

const forwardVOf = (line: Line): number => Math.max(0, -line.atZeroA / line.slopeS);

function fitOf(
  lines: readonly Line[],
  readings: readonly SpannedReading[],
  priorV: number | undefined,
  from: LineFit["from"],
): LineFit {
  const forward = spanOver(lines, forwardVOf);
  const ohm = spanOver(lines, (line) => 1 / line.slopeS);
  const nominalLine = leastSquares(readings, priorV, forward);
  const slope = Math.min(Math.max(nominalLine.slopeS, 1 / ohm.hi), 1 / ohm.lo);
  const at = forwardVOf(nominalLine);
  return {
    forwardV: { nominal: Math.min(Math.max(at, forward.lo), forward.hi), span: forward },
    resistorOhm: { nominal: 1 / slope, span: ohm },
    lines,
    nominalLine,
    from,
  };
}

/** The line nearest to all readings; of one reading, or where a prior has its say, the line through their middle from the prior's forward volts. */
function leastSquares(readings: readonly SpannedReading[], priorV: number | undefined, forwardV: Span): Line {
  const n = readings.length;
  const meanV = readings.reduce((sum, each) => sum + each.nominalV, 0) / n;
  const meanA = readings.reduce((sum, each) => sum + each.nominalA, 0) / n;
  const squares = readings.reduce((sum, each) => sum + (each.nominalV - meanV) ** 2, 0);
  const cross = readings.reduce((sum, each) => sum + (each.nominalV - meanV) * (each.nominalA - meanA), 0);
  const slopeS = priorV === undefined && squares > 0 ? cross / squares : 0;
  const ownV = slopeS > 0 ? meanV - meanA / slopeS : (priorV ?? (forwardV.lo + forwardV.hi) / 2);
  const fromV = Math.min(Math.max(ownV, forwardV.lo), forwardV.hi);
  const throughS = meanA / (meanV - fromV);
  return { slopeS: throughS, atZeroA: -throughS * fromV };
}

/** No rising line from forward volts above zero fits: is it that the current rises too little, or are they apart? */
function contradiction(readings: readonly SpannedReading[]): Outcome<LineFit> {
  // On such a line amps over volts can only grow with the volts.
  const risesTooLittle = readings.some((low) =>
    readings.some(
      (high) =>
        low.voltageV.hi < high.voltageV.lo && high.currentA.hi / high.voltageV.lo < low.currentA.lo / low.voltageV.hi,
    ),
  );
  return risesTooLittle
    ? refused(
        "rises-too-little",
        "the amps rise less than the volts: no LED on a resistor does that; a filament or a regulated lamp would",
      )
    : refused("readings-apart", `no LED on a resistor fits all ${readings.length} readings, whatever their meters`);
}
