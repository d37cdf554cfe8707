import type { PublishedTable } from "../table.js";

export const ocvLead: PublishedTable = {
  id: "ocv-lead",
  title: "12 V flooded lead-acid open-circuit voltage, rested, 80 F",
  source: {
    name: "BCI table as reproduced",
    how: "seen",
    where: "two public reproductions; a third attributes it to BCI",
  },
  columns: ["soc_percent", "volts", "specific_gravity", "freeze_F"],
  rows: [
    [100, 12.65, 1.265, -75],
    [75, 12.45, 1.225, -55],
    [50, 12.24, 1.19, -34],
    [25, 12.06, 1.155, -16],
    [0, 11.89, 1.12, -10],
  ],
  notes: [
    "Other seen tables: 12.6/12.4/12.2/12.0/11.6; 12.70/-/12.20/-/-; 12.66/12.45/12.30/12.15. They disagree at 50 %: 12.20, 12.24 or 12.30 V.",
    "Temperature: 0.024 V per 10 F (seen).",
    "The printed freeze points below 50 % look too cold (memory: discharged electrolyte 1.120 freezes near +14 F / -10 C); the seen table is suspect there, do not use.",
  ],
};
