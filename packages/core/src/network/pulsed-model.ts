import { FILAMENT_CURRENT_EXPONENT, type LoadModel } from "./load-model.js";

/**
 * What does a load draw in the pulse while PWM dims it? As when full, but for a filament: it glows by its mean heat, the root of the duty times the
 * volts, so that it is cooler and of less resistance. With current as volts^0.55 that is duty^-0.225 of what it draws at the same volts when full.
 */
export const pulsedModel = (model: LoadModel, dutyRatio: number): LoadModel =>
  model.kind === "filament" && dutyRatio > 0 && dutyRatio < 1
    ? { ...model, currentA: model.currentA * dutyRatio ** ((FILAMENT_CURRENT_EXPONENT - 1) / 2) }
    : model;
