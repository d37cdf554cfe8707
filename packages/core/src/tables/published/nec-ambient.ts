import type { PublishedTable } from "../table.js";

export const necAmbient: PublishedTable = {
  id: "nec-ambient",
  title: "Ambient correction, 30 C base",
  source: {
    name: "NFPA 70",
    edition: "2023",
    clause: "Table 310.15(B)(1)(1)",
    how: "seen",
    where: "public transcription",
  },
  columns: ["ambient_C", "60C", "75C", "90C"],
  rows: [
    ["26-30", 1, 1, 1],
    ["31-35", 0.91, 0.94, 0.96],
    ["36-40", 0.82, 0.88, 0.91],
    ["41-45", 0.71, 0.82, 0.87],
    ["46-50", 0.58, 0.75, 0.82],
    ["51-55", 0.41, 0.67, 0.76],
    ["56-60", null, 0.58, 0.71],
    ["61-65", null, 0.47, 0.65],
    ["66-70", null, 0.33, 0.58],
    ["71-75", null, null, 0.5],
    ["76-80", null, null, 0.41],
    ["81-85", null, null, 0.29],
  ],
  notes: ["Law behind it: sqrt((Tc-Ta)/(Tc-30)); e.g. 90 C, 50 C -> 0.8165."],
};
