import type { PublishedTable } from "../table.js";

export const peukert: PublishedTable = {
  id: "peukert",
  title: "Peukert law",
  source: { name: "published tutorials", how: "seen", where: "two derivations and two example pages" },
  columns: ["item", "value", "how"],
  rows: [
    ["rated-hour form", "t = H*(C/(I*H))^k", "seen (algebraically equal form T = C*(C/R)^(n-1)/I^n)"],
    ["typical k lead-acid", "1.1 to 1.3 (one page: 1.2 to 2)", "seen"],
    ["100 Ah @ 20 h, k 1.2, 5 A", 20.0, "computed"],
    ["100 Ah @ 20 h, k 1.2, 10 A", 8.706, "computed"],
    ["100 Ah @ 20 h, k 1.3, 10 A", 8.123, "computed"],
    ["published: 100 Ah, k 1.2, 5 A", "14.5 h using C/I^k", "seen"],
    ["published: 250 Ah, 20 A, k 1.3", "101.77 Ah, 5.0886 h using C/I^k", "seen"],
    ["same, rated 20 h form", 10.856, "computed"],
  ],
  notes: [
    "Sources disagree: the popular t = C/I^k with a 20-hour capacity is WRONG (it assumes C is the 1-ampere capacity): it makes a 100 Ah/20 h battery last 14.5 h at exactly its rated 5 A. Use the rated-hour form.",
  ],
};
