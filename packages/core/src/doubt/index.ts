export type {
  AskedDoubt,
  Doubt,
  DoubtOptions,
  FindingDoubt,
  NextReading,
  Outlook,
  ReadingWorth,
} from "./doubt.js";
export { doubtOf } from "./doubt-of.js";
export { fieldAt, withField } from "./field-path.js";
export { doubtAndNext, readNext } from "./read-next.js";
export { leftAbout, readAs } from "./readable.js";
export type { ReadableFigure, ReadingCaution } from "./reading.js";
