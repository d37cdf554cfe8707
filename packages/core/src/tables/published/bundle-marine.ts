import type { PublishedTable } from "../table.js";

export const bundleMarine: PublishedTable = {
  id: "bundle-marine",
  title: "Bundling (mutual heating) factors",
  source: {
    name: "33 CFR 183.435 / Coast Guard compliance guideline as reprinted; ABYC E-11",
    clause: "Table 5 note 2",
    how: "seen",
    where: "public reprint",
  },
  columns: ["current_carrying", "factor"],
  rows: [
    ["3", 0.7],
    ["4-6", 0.6],
    ["7-24", 0.5],
    ["25+", 0.4],
  ],
  notes: [
    'Sources disagree: the seen text applies these only at 50 V and more ("no limit on conductors in a bundle under 50 volts"); current ABYC E-11 ampacity tables VI-A..E apply bundle factors to DC as well (memory). Treat bundling as a declared option.',
  ],
};
