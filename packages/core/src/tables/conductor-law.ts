import { Invariant } from "../quantity/index.js";

/** Annealed copper at 20 C, ohm mm2/m: 1/58, IACS (seen in NBS Handbook 100). */
export const COPPER_OHM_MM2_PER_M_20C = 1 / 58;

/** Temperature coefficient of copper referred to 20 C, 1/K (seen in a transcription of IEC 60287-1-1 Table 1). */
export const COPPER_PER_K_20C = 0.00393;

/** One circular mil: the area of a circle one thousandth of an inch across, mm2. */
export const MM2_PER_CIRCULAR_MIL = (Math.PI / 4) * 0.0254 ** 2;

export const M_PER_FT = 0.3048;

/**
 * Diameter of a solid wire of this gauge, mm, from the law of ASTM B258 (recalled): 0.127 mm x 92^((36 - n)/39). `gauge` counts 14 as 14, 1/0 as
 * 0, 4/0 as -3 (see `gaugeNumber`).
 */
export const diameterOfGaugeMm = (gauge: number): number => 0.127 * 92 ** ((36 - gauge) / 39);

/** Copper area of a solid wire of this gauge by the same law, mm2. */
export const areaOfGaugeMm2 = (gauge: number): number => (Math.PI / 4) * diameterOfGaugeMm(gauge) ** 2;

export const circularMilsOf = (areaMm2: number): number => areaMm2 / MM2_PER_CIRCULAR_MIL;
export const areaOfCircularMilsMm2 = (circularMils: number): number => circularMils * MM2_PER_CIRCULAR_MIL;

/** Resistance at one temperature over resistance at another, for a conductor whose coefficient is referred to `referredC`. */
export const resistanceRatio = (fromC: number, toC: number, perK: number = COPPER_PER_K_20C, referredC = 20): number =>
  (1 + perK * (toC - referredC)) / (1 + perK * (fromC - referredC));

/** Resistivity of annealed copper at its own temperature, ohm mm2/m. */
export const copperOhmMm2PerM = (conductorC: number): number =>
  COPPER_OHM_MM2_PER_M_20C * resistanceRatio(20, conductorC);

/** The same in the unit of drop tables, ohm circular mil per foot: 10.371 at 20 C; the marine K of 10.75 is copper at about 29 C. */
export const copperOhmCmilPerFt = (conductorC: number): number =>
  (copperOhmMm2PerM(conductorC) / MM2_PER_CIRCULAR_MIL) * M_PER_FT;

/**
 * What does this conductor measure from end to end, ohm? Copper of `areaMm2`, `lengthM` one way, at its own temperature. `layFactor` is 1 for solid
 * wire and about 1.02 for stranded, whose strands are longer than the wire (NEC chapter 9 table 8).
 */
export const copperResistanceOhm = (areaMm2: number, lengthM: number, conductorC: number, layFactor = 1): number => {
  if (!(areaMm2 > 0)) throw new Invariant("area-not-positive", `copper of ${areaMm2} mm2`);
  return (copperOhmMm2PerM(conductorC) * lengthM * layFactor) / areaMm2;
};

/** How far may this conductor run, m, along it, before it drops `dropV` at `currentA`? The whole loop counts unless the return is free. */
export const lengthForDropM = (ohmPerM: number, currentA: number, dropV: number): number =>
  dropV / (ohmPerM * currentA);

/**
 * What copper does a run need, circular mils: CM = K I L / E (ABYC E-11 11.14.2.6, seen as quoted). `loopFt` is out and back; `ohmCmilPerFt` is K,
 * 10.75 in the published tables; `dropV` the volts that may be lost.
 */
export const circularMilsForDrop = (ohmCmilPerFt: number, currentA: number, loopFt: number, dropV: number): number =>
  (ohmCmilPerFt * currentA * loopFt) / dropV;

/**
 * How long is a conductor at another temperature worth: the run, m, that keeps the same drop when the wire is at `conductorC` instead of 20 C
 * (FAA AC 43.13-1B 11-66, seen: L2 = 254.5 L1 / (234.5 + T2)).
 */
export const runAtTemperatureM = (run20CM: number, conductorC: number): number =>
  (254.5 * run20CM) / (234.5 + conductorC);
