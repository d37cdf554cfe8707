import type { Source } from "../quantity/index.js";
import type { Severity } from "./finding.js";

/**
 * How grave may a finding be that rests on these sources? Anything, unless one of them is a figure from memory: then never `stop`. This is the
 * one place that says so; every rule passes through it.
 */
export const cappedByMemory = (severity: Severity, sources: readonly Source[]): Severity =>
  severity === "stop" && sources.some((source) => source.how === "memory") ? "mend" : severity;
