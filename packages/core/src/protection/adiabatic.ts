import { known, type Outcome, refused, type Source } from "../quantity/index.js";
import { sourceOf } from "../tables/index.js";

/** The withstand law of IEC 60364-4-43, I2t = k2S2, for times up to 5 s. */
export const ADIABATIC_SOURCE: Source = sourceOf("k-values");

/** Onderdonk's and ICEA's fusing laws, as public pages give them. */
export const FUSING_SOURCE: Source = sourceOf("fusing");

const COPPER_K = 226;
const ZERO_RESISTANCE_C = 234.5;
const MELTING_C = 1083;

const heats = (initialC: number, finalC: number): boolean => initialC > -ZERO_RESISTANCE_C && finalC > initialC;

/**
 * How much current, root second, does a square millimetre of copper stand while it heats from `initialC` to `finalC`, no heat lost? The factor k,
 * A s^0.5 per mm2: 226 times the root of ln(1 + rise over (234.5 + initial)) (constants seen in a summary of IEC 60949). Refused: `no-rise`.
 */
export const adiabaticFactor = (initialC: number, finalC: number): Outcome<number> =>
  heats(initialC, finalC)
    ? known(COPPER_K * Math.sqrt(Math.log(1 + (finalC - initialC) / (ZERO_RESISTANCE_C + initialC))))
    : refused("no-rise", `from ${initialC} C to ${finalC} C copper does not heat`);

/** How long may this current flow, s, before the conductor reaches the final temperature of k? Holds up to 5 s; longer times lose heat. */
export const withstandTimeS = (currentA: number, areaMm2: number, factor: number): number =>
  ((factor * areaMm2) / currentA) ** 2;

/** What section stands this current for this long, mm2? */
export const withstandAreaMm2 = (currentA: number, timeS: number, factor: number): number =>
  (Math.abs(currentA) * Math.sqrt(timeS)) / factor;

const onderdonkLog = (ambientC: number): number => Math.log10(1 + (MELTING_C - ambientC) / (234 + ambientC));

/**
 * After how long does this current melt a copper wire, s? Onderdonk: 33 (I/A)2 t = log10(1 + (Tm - Ta)/(234 + Ta)), A in circular mils. No heat is
 * lost in it: good below about 10 s. A published example uses 234 - Ta; that is wrong.
 */
export const meltingTimeS = (currentA: number, areaCircularMils: number, ambientC: number): number =>
  onderdonkLog(ambientC) / (33 * (currentA / areaCircularMils) ** 2);

/** Which current melts it in this time, A? The same law. */
export const meltingCurrentA = (timeS: number, areaCircularMils: number, ambientC: number): number =>
  areaCircularMils * Math.sqrt(onderdonkLog(ambientC) / (33 * timeS));

/** ICEA P-32-382 for copper: how long from one temperature to another, s? (I/A)2 t = 0.0297 log10((T2 + 234)/(T1 + 234)), A in circular mils. */
export const iceaTimeS = (currentA: number, areaCircularMils: number, initialC: number, finalC: number): number =>
  (0.0297 * Math.log10((finalC + 234) / (initialC + 234))) / (currentA / areaCircularMils) ** 2;
