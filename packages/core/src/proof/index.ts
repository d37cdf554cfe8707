export type { Judged, ProofReport, Test } from "./proof.js";
