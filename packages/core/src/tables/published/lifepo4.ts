import type { PublishedTable } from "../table.js";

export const lifepo4: PublishedTable = {
  id: "lifepo4",
  title: "LiFePO4 figures",
  source: { name: "public guides", how: "seen", where: "several public pages (not standards)" },
  columns: ["item", "per_cell_V", "12V_4s_V"],
  rows: [
    ["nominal", 3.2, 12.8],
    ["full charge limit", 3.65, 14.6],
    ["float", "3.375", 13.5],
    ["cut-off", "2.5 to 2.8", "10.0 to 11.2"],
    ["50 % rested", "3.27 (one page); 3.2 (another)", "13.08 (one page)"],
  ],
  notes: ["Flat plateau: voltage cannot give state of charge between about 20 and 90 %."],
};
