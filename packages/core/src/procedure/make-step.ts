import type { CircuitId, ModuleId } from "../record/index.js";
import type { Caution, ExpectedReading, Step } from "./procedure.js";
import { rollBackWords } from "./roll-back.js";
import type { StepCode } from "./step-codes.js";

export type Given = Readonly<Record<string, string | number>>;

interface More {
  readonly module?: ModuleId;
  readonly circuit?: CircuitId;
  readonly cautions?: readonly Caution[];
  readonly expect?: readonly ExpectedReading[];
  readonly expectLamps?: readonly string[];
}

/** One step, with the way back that belongs to its code. */
export const makeStep = (id: string, code: StepCode, parameters: Given = {}, more: More = {}): Step => ({
  id,
  code,
  parameters,
  cautions: [],
  expect: [],
  expectLamps: [],
  ...more,
  rollBack: rollBackWords(code),
});

export const caution = (code: Caution["code"], parameters: Given = {}): Caution => ({ code, parameters });

/** Only the parameters that have a value. */
export const given = (parameters: Readonly<Record<string, string | number | undefined>>): Given =>
  Object.fromEntries(Object.entries(parameters).filter(([, value]) => value !== undefined)) as Given;
