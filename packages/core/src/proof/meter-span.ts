import { type Span, spanOf } from "../quantity/index.js";

/**
 * Between what does the truth lie when a meter shows this? A stated `plusMinus` wins; else the row `measured` of the one tolerance table (hand-held
 * voltmeter, clamp meter). Source: common practice, no source. Volts or amperes, as shown.
 */
export const meterSpan = (shown: number, unit: "V" | "A", plusMinus: number | undefined): Span =>
  spanOf(
    { value: shown, basis: "measured", ...(plusMinus === undefined ? {} : { plusMinus }) },
    unit === "V" ? "voltage" : "current",
  );
