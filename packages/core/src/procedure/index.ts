export type { Caution, ExpectedReading, Procedure, Step } from "./procedure.js";
