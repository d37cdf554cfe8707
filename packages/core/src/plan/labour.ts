import { COMMON_PRACTICE, type Figure, figureValue, type Source } from "../quantity/index.js";
import { DEFAULT_POLICY } from "../record/index.js";

/** Minutes to set a bank anew on a module that stays: find the card, power down, set, read back. Ours; a coach's own figure belongs in its policy. */
export const BANK_SETTING_MIN = DEFAULT_POLICY.bankSettingMin;
/** Minutes to change one blade fuse and its label. */
export const FUSE_CHANGE_MIN = DEFAULT_POLICY.fuseChangeMin;
export const LABOUR_SOURCE: Source = COMMON_PRACTICE;

/** Whole minutes, part minutes counted as begun. */
export const wholeMinutes = (minutes: Figure | undefined): number =>
  minutes === undefined ? 0 : Math.max(0, Math.ceil(figureValue(minutes) - 1e-9));
