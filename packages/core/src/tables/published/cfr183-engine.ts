import type { PublishedTable } from "../table.js";

export const cfr183Engine: PublishedTable = {
  id: "cfr183-engine",
  title: "Engine-space (50 C) factors",
  source: {
    name: "33 CFR 183.425 Table 5 note 1",
    clause: "note 1",
    how: "memory",
    where:
      "0.85 for 105 C and the already-derated 105 C amperes were SEEN in reprints; the other factors are recalled (60/75/90 C also equal the seen NEC 46-50 C row)",
  },
  columns: ["insulation_C", "factor", "how"],
  rows: [
    [60, 0.58, "memory; = NEC seen"],
    [75, 0.75, "memory; = NEC seen"],
    [80, 0.78, "memory"],
    [90, 0.82, "memory; = NEC seen"],
    [105, 0.85, "seen"],
    [125, 0.89, "memory"],
    [200, 1.0, "memory"],
  ],
  notes: [
    "Seen 105 C amps in engine space, 18..4/0: 17 21 30 38 51 68 102 136 153 178 208 242 280 327 378 (x0.85, rounded).",
  ],
};
