import type { PublishedTable } from "../table.js";

export const flickerDef: PublishedTable = {
  id: "flicker-def",
  title: "Percent flicker",
  source: { name: "IES Lighting Handbook / CIE TN 006", how: "memory", where: "formula not in an opened text" },
  columns: ["item", "value"],
  rows: [
    ["percent flicker (modulation depth)", "100*(max-min)/(max+min)"],
    ["flicker index", "area above mean / total area per cycle"],
    ["California JA8 2019", "reduced-flicker: < 30 % at <= 200 Hz (frequency limit 200 Hz seen, 30 % memory)"],
  ],
  notes: [],
};
