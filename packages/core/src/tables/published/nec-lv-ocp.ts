import type { PublishedTable } from "../table.js";

export const necLvOcp: PublishedTable = {
  id: "nec-lv-ocp",
  title: "Low-voltage overcurrent protection",
  source: {
    name: "NFPA 70",
    edition: "2002/2005 551.10(E)(1); later 552.10(E)(1)",
    clause: "Table",
    how: "memory",
    where: "table body never appeared in an opened text; recalled",
  },
  columns: ["wire_awg", "ampacity_and_max_ocp_A", "wire_type"],
  rows: [
    ["18", 6, "stranded only"],
    ["16", 8, "stranded only"],
    ["14", 15, "stranded or solid"],
    ["12", 20, "stranded or solid"],
    ["10", 30, "stranded or solid"],
  ],
  notes: ["VERIFY. Distinct from 240.4(D), where 18 and 16 AWG are 7 and 10 A."],
};
