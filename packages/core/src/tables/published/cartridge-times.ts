import type { PublishedTable } from "../table.js";

export const cartridgeTimes: PublishedTable = {
  id: "cartridge-times",
  title: "Small cartridge fuse gates (for glass fuses in older coaches)",
  source: {
    name: "UL 248-14 and IEC 60127-2",
    clause: "time-current gates",
    how: "seen",
    where: "a public technical article tabulating both",
  },
  columns: ["family", "percent_rated", "min", "max"],
  rows: [
    ["UL 248-14 fast", 110, "4 h", null],
    ["UL 248-14 fast", 135, null, "60 min"],
    ["UL 248-14 fast", 200, null, "2 min"],
    ["UL 248-14 slow, <=3 A", 200, "5 s", "120 s"],
    ["UL 248-14 slow, >3 A", 200, "12 s", "120 s"],
    ["IEC 60127-2 F, 0.125-10 A", 150, "60 min", null],
    ["IEC F", 210, null, "30 min"],
    ["IEC F", 275, "50 ms", "2 s"],
    ["IEC F", 400, "10 ms", "300 ms"],
    ["IEC F", 1000, null, "20 ms"],
    ["BS 1362 13 A", 231, "1 s at 30 A", "400 s at 30 A"],
  ],
  notes: [
    '"rated current" means different things: a UL 248-14 fuse must carry 110 % (seen; ISO 8820 likewise by memory), an IEC 60127 fuse 150 %.',
  ],
};
