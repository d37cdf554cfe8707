import type { PublishedTable } from "../table.js";

export const canPhys: PublishedTable = {
  id: "can-phys",
  title: "Termination and physical layer",
  source: { name: "ISO 11898-2, SAE J1939-11/-15", how: "seen", where: "public documents quoting them" },
  columns: ["item", "value", "how"],
  rows: [
    ["termination each end", "120 ohm (108 to 132 quoted; 100 to 130 memory)", "seen"],
    ["measured, unpowered, both fitted", "60 ohm; one missing 120 ohm; three fitted 40 ohm", "computed"],
    ["cable resistance", "70 mohm/m", "seen"],
    ["J1939-11: length, stub", "40 m, 1 m, linear", "seen"],
    ["J1939-15: length, stub", "40 m; stub quoted 0.3 / 1.0 m on one page, 3 m by memory", "seen/memory"],
    ["dominant differential", "1.5 to 3.0 V", "seen"],
    ["recommended average load", "<= 40 %", "seen"],
  ],
  notes: [],
};
