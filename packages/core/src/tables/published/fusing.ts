import type { PublishedTable } from "../table.js";

export const fusing: PublishedTable = {
  id: "fusing",
  title: "Conductor fusing",
  source: { name: "Onderdonk; ICEA P-32-382", how: "seen", where: "public pages" },
  columns: ["item", "formula", "how"],
  rows: [
    ["Onderdonk", "33*(I/A)^2*t = log10(1+(Tm-Ta)/(234+Ta)); A in circular mils, Tm = 1083 C", "seen"],
    ["ICEA P-32-382 copper", "(I/A)^2*t = 0.0297*log10((T2+234)/(T1+234)); A in circular mils", "seen"],
    ["16 AWG (2581 cmil), Ta 25 C, t 5 s", "168.9 A", "computed"],
    ["14 AWG (4110 cmil), 400 A", "2.26 s", "computed"],
    ["Preece, copper", "I = 10244*d^1.5 (d inch): 16 AWG (0.0524 in as printed) 123 A", "seen"],
  ],
  notes: [
    "Sources disagree: the published worked example used 234 - Ta (=209) and got 178 A and about 2.5 s; the correct 234 + Ta gives 168.9 A and 2.26 s. Do not test against that example.",
    "Onderdonk neglects heat loss and latent heat: good below about 10 s.",
  ],
};
