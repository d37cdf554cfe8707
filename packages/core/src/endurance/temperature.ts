import { MARKED_AT_C } from "./class-battery.js";

/** No battery is taken to give less than this share for cold alone; the straight line is from memory and ends somewhere. */
const LEAST_SHARE = 0.2;

/**
 * What share of its marked capacity does a battery give at this temperature? A straight line down from 25 C, `coldPerK` for every kelvin; warmth gives
 * nothing extra. From memory; colder never gives more.
 */
export const capacityShareAt = (temperatureC: number, coldPerK: number): number =>
  Math.max(LEAST_SHARE, 1 - coldPerK * Math.max(0, MARKED_AT_C - temperatureC));
