import type { PublishedTable } from "../table.js";

export const bladeColour: PublishedTable = {
  id: "blade-colour",
  title: "Blade fuse rating and colour",
  source: {
    name: "ISO 8820-3",
    edition: "2015",
    clause: "marking table",
    how: "memory",
    where:
      "scope (types C, E, F; 32 V or 58 V; up to 100 A; 1000 A breaking) SEEN in the catalogue abstract; colours recalled, five of them also seen on public pages",
  },
  columns: ["rating_A", "colour", "how"],
  rows: [
    [1, "black", "memory"],
    [2, "grey", "memory"],
    [3, "violet", "seen (as purple)"],
    [4, "pink", "memory"],
    [5, "tan / light brown", "memory"],
    [7.5, "brown", "seen"],
    [10, "red", "seen"],
    [15, "blue", "seen"],
    [20, "yellow", "memory"],
    [25, "clear / natural", "memory"],
    [30, "green", "seen"],
    [35, "blue-green", "memory"],
    [40, "orange / amber", "memory"],
  ],
  notes: [
    "Sources disagree: a public page says tan = 1 A; the convention is tan = 5 A, black = 1 A. The printed number is the truth; colour is only a check.",
  ],
};
