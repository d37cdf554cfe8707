import type { PublishedTable } from "../table.js";

export const lampInrush: PublishedTable = {
  id: "lamp-inrush",
  title: "Tungsten cold inrush",
  source: { name: "various", how: "seen", where: "public engineering pages and an open textbook" },
  columns: ["source", "ratio"],
  rows: [
    ["lamp-engineering reference", "about 14"],
    ["French installation guide", "10 to 15"],
    ["open encyclopaedia", "cold resistance 1/15 of hot; stable in about 0.10 s (120 V 100 W)"],
    ["lamp-driver application note", "10 to 12 peak, about 2x after 3 to 5 ms"],
    ["textbook headlight example (see worked examples)", "4.8/0.350 = 13.7"],
  ],
  notes: [],
};
