import type { PublishedTable } from "../table.js";

export const iso10133: PublishedTable = {
  id: "iso10133",
  title: "Small craft DC: clauses seen and ampacity recalled",
  source: {
    name: "ISO 10133",
    edition: "2012",
    clause: "7.3-7.8, A.2",
    how: "memory",
    where: "clauses 7.3-7.7 and the 3 % list were SEEN in public extracts; the ampacity columns are recalled",
  },
  columns: ["mm2", "60C", "70C", "85-90C", "105C", "125C", "200C"],
  rows: [
    [0.75, 6, 10, 12, 16, 20, 25],
    [1, 8, 14, 18, 20, 25, 35],
    [1.5, 12, 18, 21, 25, 30, 40],
    [2.5, 17, 25, 30, 35, 40, 45],
    [4, 22, 35, 40, 45, 50, 55],
    [6, 29, 45, 50, 60, 70, 75],
    [10, 40, 65, 70, 90, 100, 120],
    [16, 54, 90, 100, 130, 150, 170],
    [25, 71, 120, 140, 170, 185, 200],
    [35, 87, 160, 185, 210, 225, 240],
    [50, 105, 210, 230, 270, 300, 325],
    [70, 135, 265, 285, 330, 360, 375],
    [95, 165, 310, 330, 390, 410, 430],
    [120, 190, 360, 400, 450, 480, 520],
  ],
  notes: [
    "Seen clauses: conductor longer than 200 mm run singly >= 1 mm2; in a sheath >= 0.75 mm2 and <= 800 mm outside it; support every 450 mm (300 mm for battery cables); 3 % drop for panel mains, navigation lights, bilge blowers and pumps. Ampacities: VERIFY.",
  ],
};
