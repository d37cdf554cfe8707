import type { PublishedTable } from "../table.js";

export const abycVdrop: PublishedTable = {
  id: "abyc-vdrop",
  title: "Voltage-drop categories and formula",
  source: {
    name: "ABYC E-11",
    edition: "excerpt of 11.14.2.6 (c. 2003-2008 numbering)",
    clause: "11.14.2.6",
    how: "seen",
    where: "quotation of the clause on a public page and two reprints",
  },
  columns: ["item", "value"],
  rows: [
    [
      "critical circuits: panel main feeders, bilge blowers, electronics, navigation lights, others where drop must be minimal",
      "<= 3 %",
    ],
    ["lighting other than navigation, non-critical", "<= 10 %"],
    ["formula", "CM = K*I*L/E"],
    ["K", "10.75 ohm*cmil/ft"],
    ["L", "feet, source positive to device and back to source negative (round trip)"],
    ["E", "allowable drop, volts (0.36 / 1.2 V at 12 V; 0.72 / 2.4 V at 24 V)"],
    ["conflict between ampacity and drop tables", "larger conductor wins"],
    [
      "minimum single conductor",
      "16 AWG (18 AWG allowed in sheath <= 30 in outside, inside panels, <1 A electronics, pigtails < 7 in)",
    ],
  ],
  notes: [
    "K = 10.75 is copper at about 29 C. At 75 C K is 12.61 (solid) or 12.86 (stranded): the published tables understate a hot wire by 17..20 %.",
  ],
};
