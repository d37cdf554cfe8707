import type { PublishedTable } from "../table.js";

export const ieee1789: PublishedTable = {
  id: "ieee1789",
  title: "Maximum percent modulation",
  source: {
    name: "IEEE Std 1789-2015",
    edition: "2015",
    clause: "8.1.1 simple recommended practices",
    how: "seen",
    where: "open-source flicker-analysis module that cites clause 8.1.1; standard title page seen, clause not opened",
  },
  columns: ["frequency_Hz", "low_risk_percent", "no_observable_effect_percent"],
  rows: [
    [10, 0.25, 0.1],
    [60, 1.5, 0.6],
    [90, 7.2, 3.0],
    [100, 8.0, 3.33],
    [120, 9.6, 4.0],
    [200, 16.0, 6.67],
    [400, 32.0, 13.33],
    [500, 40.0, 16.67],
    [1000, 80.0, 33.33],
    [1250, 100.0, 41.67],
    [2000, "no limit", 66.67],
    [3000, "no limit", "no limit"],
  ],
  notes: [
    "Low risk: <90 Hz 0.025 f; 90..1250 Hz 0.08 f; above: none. No effect: <90 Hz 0.01 f; 90..3000 Hz 0.0333 f; above: none.",
    "On/off PWM of LEDs has 100 % modulation: low risk needs f >= 1250 Hz, no effect f >= 3000 Hz.",
    "Sources disagree: a public glossary swaps these (low risk 0.0333 f, no effect 0.01 f for 90 Hz..3 kHz); it contradicts the clause as coded and is wrong above 90 Hz.",
  ],
};
