import type { PublishedTable } from "../table.js";

export const euCaravan: PublishedTable = {
  id: "eu-caravan",
  title: "European habitation 12/24 V standard",
  source: {
    name: "EN 1648-1 (caravans), EN 1648-2 (motor caravans)",
    edition: "2004, 2012, 2018; revision to 12/24/48 V",
    clause: "scope",
    how: "seen",
    where: "catalogue abstracts only; requirements and conductor tables not opened",
  },
  columns: ["item", "value"],
  rows: [
    [
      "EN 1648-2 scope",
      "12 V DC habitation installations of motor caravans connected to base vehicle; revision covers 12/24/48 V",
    ],
    ["mains part", "HD 60364-7-721"],
  ],
  notes: [],
};
