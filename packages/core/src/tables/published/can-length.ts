import type { PublishedTable } from "../table.js";

export const canLength: PublishedTable = {
  id: "can-length",
  title: "Bus length against bit rate",
  source: {
    name: "CiA 301",
    edition: "4.x",
    clause: "bit-timing table",
    how: "seen",
    where: "quoted in public documents",
  },
  columns: ["kbit_s", "length_m", "single_stub_m", "all_stubs_m"],
  rows: [
    [1000, 25, 1.5, 7.5],
    [800, 50, 2.5, 12.5],
    [500, 100, 5.5, 27.5],
    [250, 250, 11, 55],
    [125, 500, 22, 110],
    [50, 1000, 55, 275],
    [20, 2500, null, null],
    [10, 5000, null, null],
  ],
  notes: [
    "Sources disagree: 1 Mbit/s is 25 m (CiA) or 40 m (ISO 11898-2 practice). Stub columns from one device document.",
  ],
};
