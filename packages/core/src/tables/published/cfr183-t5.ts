import type { PublishedTable } from "../table.js";

export const cfr183T5: PublishedTable = {
  id: "cfr183-t5",
  title: "Allowable amperage of conductors, 30 C ambient (basis of the ABYC E-11 table)",
  source: {
    name: "33 CFR 183.425 (US federal regulation)",
    edition: "current text",
    clause: "Table 5",
    how: "seen",
    where: "public reproduction of the regulation; 105 C column agrees with two reprints of the ABYC-based table",
  },
  columns: ["awg", "60C", "75C", "80C", "90C", "105C", "125C", "200C"],
  rows: [
    ["18", 10, 10, 15, 20, 20, 25, 25],
    ["16", 15, 15, 20, 25, 25, 30, 35],
    ["14", 20, 20, 25, 30, 35, 40, 45],
    ["12", 25, 25, 35, 40, 45, 50, 55],
    ["10", 40, 40, 50, 55, 60, 70, 70],
    ["8", 55, 65, 70, 70, 80, 90, 100],
    ["6", 80, 95, 100, 100, 120, 125, 135],
    ["4", 105, 125, 130, 135, 160, 170, 180],
    ["3", 120, 145, 150, 155, 180, 195, 210],
    ["2", 140, 170, 175, 180, 210, 225, 240],
    ["1", 165, 195, 210, 210, 245, 265, 280],
    ["1/0", 195, 230, 245, 245, 285, 305, 325],
    ["2/0", 225, 265, 285, 285, 330, 355, 370],
    ["3/0", 260, 310, 330, 330, 385, 410, 430],
    ["4/0", 300, 360, 385, 385, 445, 475, 510],
  ],
  notes: ["Public domain. ABYC E-11 itself was not opened."],
};
