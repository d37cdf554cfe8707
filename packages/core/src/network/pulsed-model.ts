import { FILAMENT_CURRENT_EXPONENT, type LoadModel } from "./load-model.js";

/**
 * How many times its full current does a filament draw in the pulse at this duty and the same volts? It glows by its mean heat, the root of the duty times the
 * volts, so that it is cooler and of less resistance: with current as volts^0.55 that is duty^-0.225. 1 at duty 1, and where it is off.
 */
export const filamentPulseRatio = (dutyRatio: number): number =>
  dutyRatio > 0 && dutyRatio < 1 ? dutyRatio ** ((FILAMENT_CURRENT_EXPONENT - 1) / 2) : 1;

/** What a load draws in the pulse while PWM dims it: as when full, but for a filament. */
export const pulsedModel = (model: LoadModel, dutyRatio: number): LoadModel =>
  model.kind === "filament" ? { ...model, currentA: model.currentA * filamentPulseRatio(dutyRatio) } : model;
