import type { PublishedTable } from "../table.js";

export const fuseContinuous: PublishedTable = {
  id: "fuse-continuous",
  title: "Continuous load on a fuse",
  source: { name: "NEC 210.20(A) and handbooks", how: "seen", where: "public pages" },
  columns: ["rule", "figure", "how"],
  rows: [
    ["device >= 125 % of continuous load", "load <= 80 % of rating", "seen"],
    ["Class L and E-rated fuses", "100 %", "seen"],
    ["general-purpose fuses at 25 C, electronic practice", "75 %", "memory"],
    ["ambient rerating of a fast fuse", "about -0.1..-0.2 %/K", "seen (0.2 %/K in one guide)"],
  ],
  notes: [],
};
