import type { PublishedTable } from "../table.js";

export const bladeTimes: PublishedTable = {
  id: "blade-times",
  title: "Blade fuse operating-time gates, 23 C",
  source: {
    name: "ISO 8820-3",
    edition: "2015 (types C and F)",
    clause: "operating time-rating table",
    how: "memory",
    where: "NOT found in any opened text",
  },
  columns: ["percent_rated", "min_s", "max_s"],
  rows: [
    [110, 360000, null],
    [135, 0.75, 600],
    [160, 0.25, 50],
    [200, 0.15, 5],
    [350, 0.04, 0.5],
    [600, null, 0.1],
  ],
  notes: [
    "VERIFY. Some ratings and older editions differ (e.g. 135 % max 120 s..1800 s, 350 % min 0.08 s, 600 % min 0.02 s). Do not ship as a standard figure without opening the standard.",
  ],
};
