import type { PublishedTable } from "../table.js";

export const cfr183Ocp: PublishedTable = {
  id: "cfr183-ocp",
  title: "Overcurrent placement and rating, <50 V",
  source: { name: "33 CFR 183.455", edition: "current", clause: "(a)-(d)", how: "seen", where: "public reproduction" },
  columns: ["rule", "figure"],
  rows: [
    ["each ungrounded conductor protected by manually reset trip-free breaker or fuse", "at the source"],
    ["if impractical, measured along conductor", "within 7 in (178 mm)"],
    ["if sheathed or enclosed the whole way", "within 40 in (1.02 m)"],
    ["maximum device rating below 50 V", "150 % of Table 5 amperage"],
    ["at 50 V and more", "100 % (next standard size allowed to 150 %)"],
  ],
  notes: [
    "Sources disagree: 150 % (33 CFR) against 100 % (NEC 552.10) against 125 % next size (a US state transport department vehicle-electrical specification, seen). Say which rule is applied.",
    "The same state specification (seen, 3.1) requires each overcurrent device readily accessible and LABELLED with circuit designation and current rating.",
  ],
};
