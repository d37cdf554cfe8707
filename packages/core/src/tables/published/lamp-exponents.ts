import type { PublishedTable } from "../table.js";

export const lampExponents: PublishedTable = {
  id: "lamp-exponents",
  title: "Filament lamp exponents on V/Vd",
  source: {
    name: "Standard Handbook for Electrical Engineers",
    edition: "11th ed., 1978, p. 22-8",
    clause: "via open encyclopaedia",
    how: "seen",
    where: "article citing the handbook",
  },
  columns: ["quantity", "exponent"],
  rows: [
    ["current", "0.55"],
    ["power", "1.6"],
    ["luminous intensity", "3.4 to 3.5"],
    ["life", "-12 to -16"],
    ["colour temperature", "0.42"],
  ],
  notes: [
    "Check: 0.55 vs 1.6 gives P/V exponent 0.6: the two published exponents are not mutually exact.",
    "IESNA lumens 3.4 / life -13: memory.",
    "At 13.8 V on a 12.0 V lamp: light x1.61, life x0.16 (exponent -13), computed.",
  ],
};
