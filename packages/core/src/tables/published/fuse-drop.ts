import type { PublishedTable } from "../table.js";

export const fuseDrop: PublishedTable = {
  id: "fuse-drop",
  title: "Blade fuse drop and cold resistance (order of magnitude)",
  source: { name: "typical data, no standard", how: "memory", where: "recalled; no standard figure found" },
  columns: ["rating_A", "cold_mohm", "drop_mV_at_rated"],
  rows: [
    [5, 18, 120],
    [10, 7.5, 100],
    [15, 4.8, 95],
    [20, 3.4, 90],
    [30, 2.0, 85],
  ],
  notes: ["Rule of thumb only: about 0.1 V at rated current, R_hot about 0.1/In. Measure, do not assume."],
};
