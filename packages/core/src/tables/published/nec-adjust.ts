import type { PublishedTable } from "../table.js";

export const necAdjust: PublishedTable = {
  id: "nec-adjust",
  title: "Adjustment for more than three current-carrying conductors",
  source: {
    name: "NFPA 70",
    edition: "2023",
    clause: "Table 310.15(C)(1)",
    how: "seen",
    where: "public transcription; second page agrees",
  },
  columns: ["conductors", "percent"],
  rows: [
    ["4-6", 80],
    ["7-9", 70],
    ["10-20", 50],
    ["21-30", 45],
    ["31-40", 40],
    ["41+", 35],
  ],
  notes: ["Count includes spares; applies when bundled longer than 600 mm (24 in)."],
};
