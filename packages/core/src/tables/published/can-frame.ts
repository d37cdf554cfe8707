import type { PublishedTable } from "../table.js";

export const canFrame: PublishedTable = {
  id: "can-frame",
  title: "Worst-case classical CAN frame bits incl. 3-bit interframe space",
  source: {
    name: 'Real-Time Systems 35 (2007) 239-272, "CAN schedulability analysis: refuted, revisited and revised"',
    edition: "2007",
    clause: "eqs. (1)-(3)",
    how: "seen",
    where: "formula quoted in the header of the general-purpose Linux CAN utilities",
  },
  columns: ["bytes", "base_11bit", "ext_29bit", "ext_ms_at_125k", "ext_ms_at_250k"],
  rows: [
    [0, 55, 80, 0.64, 0.32],
    [1, 65, 90, 0.72, 0.36],
    [2, 75, 100, 0.8, 0.4],
    [3, 85, 110, 0.88, 0.44],
    [4, 95, 120, 0.96, 0.48],
    [5, 105, 130, 1.04, 0.52],
    [6, 115, 140, 1.12, 0.56],
    [7, 125, 150, 1.2, 0.6],
    [8, 135, 160, 1.28, 0.64],
  ],
  notes: [
    "Base: g=34, ext: g=54; bits = g+8n+13+floor((g+8n-1)/4) = 55+10n and 80+10n. Without stuffing 47+8n and 67+8n.",
    "Published check: 135 bits base, 8 bytes; about 1.1 ms at 125 kbit/s (seen).",
    "Encyclopaedia form 8n+44+floor((34+8n-1)/4) = 132 for n=8 excludes the 3-bit interframe space: same physics.",
  ],
};
