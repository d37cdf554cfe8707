import type { PublishedTable } from "../table.js";

export const kValues: PublishedTable = {
  id: "k-values",
  title: "Adiabatic factor k, copper: I2t = k2S2 (A, s, mm2; t <= 5 s)",
  source: {
    name: "IEC 60364-4-43 / national adoption",
    edition: "table 43A and 54 series",
    clause: "433/434/543",
    how: "seen",
    where:
      "public reproduction of a national adoption table; formula constants 226 and 234.5 seen in an IEC 60949 summary",
  },
  columns: ["insulation", "initial_C", "final_C", "k_published", "k_computed"],
  rows: [
    ["PVC 70 C", 70, 160, 115, 115.0],
    ["butyl rubber", 85, 220, 134, 134.2],
    ["EPR/XLPE 90 C", 90, 250, 143, 143.1],
    ["60 C rubber", 60, 200, 141, 140.9],
    ["PVC, protective, cold start", 30, 160, 143, 142.9],
    ["XLPE, protective, cold start", 30, 250, 176, 175.8],
    ["PVC 105 C automotive (assumed 105->160)", 105, 160, null, 87.6],
    ["XLPE 125 C automotive (assumed 125->250)", 125, 250, null, 123.5],
  ],
  notes: [
    "60 C rubber 141: published value from memory, reproduced by the formula. Last two rows computed for vehicle wire; final temperatures are assumptions.",
    "The figure k = 143 occurs twice with different meanings (XLPE line conductor, and PVC protective conductor starting at 30 C).",
  ],
};
