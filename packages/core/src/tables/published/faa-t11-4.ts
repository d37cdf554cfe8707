import type { PublishedTable } from "../table.js";

export const faaT114: PublishedTable = {
  id: "faa-t11-4",
  title: "Switch/contact derating factor: required nominal rating = factor x continuous current",
  source: {
    name: "FAA AC 43.13-1B",
    edition: "9/8/98",
    clause: "Table 11-4",
    how: "seen",
    where: "public page reproduction",
  },
  columns: ["load", "28V", "12V"],
  rows: [
    ["lamp", 8, 5],
    ["inductive (relay, solenoid)", 4, 2],
    ["resistive (heater)", 2, 1],
    ["motor", 3, 2],
  ],
  notes: ["Directly useful for relay output channels."],
};
