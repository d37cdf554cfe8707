import type { PublishedTable } from "../table.js";

export const necLvRv: PublishedTable = {
  id: "nec-lv-rv",
  title: "NEC rules for low-voltage systems in recreational units",
  source: {
    name: "NFPA 70 (NEC)",
    edition: "2008, 2017/2020 as marked",
    clause: "551.1, 552.10, 240.4(D), 720.4",
    how: "seen",
    where: "public web reproductions of article text and of a 2020-based article summary; code book not opened",
  },
  columns: ["rule", "figure", "clause", "how"],
  rows: [
    [
      "Scope: article 551 covers equipment OTHER THAN low-voltage; low voltage is left to NFPA 1192 and ANSI/RVIA LV",
      "no 551.10 table in these editions",
      "551.1 (2008 and 2017)",
      "seen",
    ],
    ["Park trailers keep a low-voltage part", "552.10 (A)-(F)", "Art. 552 Part II (2008, 2017)", "seen"],
    [
      "Conductors: copper; single-wire must be stranded; types GXL, HDT, SGT, SGR, SXL or listed insulation; 6..18 AWG or SAE must be listed",
      "chassis allowed as return",
      "552.10(B)(1)-(2)",
      "seen",
    ],
    ["Surface marking of every insulated low-voltage conductor", "interval <= 1.2 m (4 ft)", "552.10(B)(3)", "seen"],
    [
      "Separation of low-voltage from other-source wiring",
      ">= 1/2 in (13 mm) gap, or separate fastening",
      "552.10(C)(3)",
      "seen",
    ],
    [
      "Battery chassis-ground bonding conductor",
      ">= 8 AWG copper, never smaller than the unbonded battery lead",
      "552.10(C)(4)",
      "seen",
    ],
    [
      "Battery compartment ventilation",
      "1100 mm2 (1.7 in2) at top and at bottom, within 50 mm (2 in)",
      "552.10(D)",
      "seen",
    ],
    [
      "Overcurrent device rating not above conductor ampacity; by Table 552.10(E)(1)",
      "table values: see nec-lv-ocp",
      "552.10(E)(1)",
      "seen",
    ],
    [
      "Overcurrent device location",
      "accessible, within 450 mm (18 in) of where the supply connects",
      "552.10(E)(4)",
      "seen",
    ],
    ["Converter enclosure bonding", ">= 8 AWG copper", "551.20(C)", "seen"],
    ["Small conductors, general wiring: 18 AWG", "7 A device, continuous load <= 5.6 A", "240.4(D)(1)", "seen"],
    ["16 AWG", "10 A device, continuous load <= 8 A", "240.4(D)(2)", "seen"],
    ["14 / 12 / 10 AWG copper", "15 / 20 / 30 A", "240.4(D)(3),(5),(7)", "seen"],
    [
      "Standard device ratings",
      "10, 15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 110, 125, 150, 175, 200 A ...",
      "240.6(A) 2023",
      "seen",
    ],
    ["Continuous load (3 h or more)", "device >= 125 % of continuous load", "210.20(A)", "seen"],
    [
      "Article 720 (<50 V): conductor >= 12 AWG, appliance branch >= 10 AWG",
      "does not apply where 551 Part II or 552 applies",
      "720.2, 720.4",
      "seen",
    ],
    ["Original 551.10 (editions up to 2005) numbering and table", "as 552.10", "551.10(E)(1)", "memory"],
  ],
  notes: [
    "The 551.10(E)(1) table no longer exists in current NEC article 551; cite 552.10(E)(1) or ANSI/RVIA LV instead.",
  ],
};
