import type { PublishedTable } from "../table.js";

export const faaT119: PublishedTable = {
  id: "faa-t11-9",
  title: "Current-carrying capacity and resistance of copper wire",
  source: {
    name: "FAA AC 43.13-1B",
    edition: "CHG 1, 9/27/01",
    clause: "Table 11-9",
    how: "seen",
    where: "two public page reproductions of the circular (public-domain US document)",
  },
  columns: ["wire_size", "max_ohm_per_kft_20C_tinned", "circular_mils", "amps_105C", "amps_150C", "amps_200C"],
  rows: [
    ["24", 28.4, 475, 2.5, 4, 5],
    ["22", 16.2, 755, 3, 5, 6],
    ["20", 9.88, 1216, 4, 7, 9],
    ["18", 6.23, 1900, 6, 9, 12],
    ["16", 4.81, 2426, 7, 11, 14],
    ["14", 3.06, 3831, 10, 14, 18],
    ["12", 2.02, 5874, 13, 19, 25],
    ["10", 1.26, 9354, 17, 26, 32],
    ["8", 0.7, 16983, 38, 57, 71],
    ["6", 0.44, 26818, 50, 76, 97],
    ["4", 0.28, 42615, 68, 103, 133],
    ["2", 0.18, 66500, 95, 141, 179],
    ["1", 0.15, 81700, 113, 166, 210],
    ["1/0", 0.12, 104500, 128, 192, 243],
    ["2/0", 0.09, 133000, 147, 222, 285],
    ["3/0", 0.07, 166500, 172, 262, 335],
    ["4/0", 0.06, 210900, 204, 310, 395],
  ],
  notes: [
    "Note 1: 70 C ambient, 33 or more wires in the bundle (24..10 AWG) or 9 wires (8 and larger), at most 20 % of harness capacity in use, 60 000 ft: very conservative for a coach.",
    "12 AWG at 200 C: 25 in both reproductions.",
  ],
};
