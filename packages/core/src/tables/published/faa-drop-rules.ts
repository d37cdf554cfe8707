import type { PublishedTable } from "../table.js";

export const faaDropRules: PublishedTable = {
  id: "faa-drop-rules",
  title: "Aircraft DC voltage-drop rules (comparison)",
  source: {
    name: "FAA AC 43.13-1B 11-66 and FAA maintenance-technician handbooks",
    clause: "11-66",
    how: "seen",
    where:
      "public reproductions; the per-voltage limits are the 1 V and 0.5 V columns of the seen Table 11-7, their pairing with 28 V and 14 V is recalled",
  },
  columns: ["rule", "figure", "how"],
  rows: [
    ["main feeder, source to bus", "<= 2 % of regulated voltage", "seen"],
    ["ground return through structure, source ground point to load ground", "<= 0.005 ohm satisfactory", "seen"],
    ["load circuit, 28 V system", "1 V continuous, 2 V intermittent", "memory"],
    ["load circuit, 14 V system", "0.5 V continuous, 1 V intermittent", "memory"],
    ["loaded temperature correction of run length", "L2 = 254.5*L1/(234.5+T2)", "seen"],
  ],
  notes: ["0.005 ohm at 20 A is 0.1 V: a usable chassis-return test limit."],
};
