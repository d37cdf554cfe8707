import { resistanceRatio } from "./conductor-law.js";

/** Copper of a relay's coil referred to 25 C, 1/K, as the relay note that was seen has it. */
export const COIL_PER_K_25C = 0.003853;

/**
 * At how many volts does a relay pull in when its coil is at `coilC`, V? A coil needs a current, so the volts rise with its resistance.
 * `pullIn25V` is the figure for a coil at 25 C.
 */
export const relayPullInV = (pullIn25V: number, coilC: number): number =>
  pullIn25V * resistanceRatio(25, coilC, COIL_PER_K_25C, 25);
