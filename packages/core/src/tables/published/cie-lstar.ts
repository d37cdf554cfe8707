import type { PublishedTable } from "../table.js";

export const cieLstar: PublishedTable = {
  id: "cie-lstar",
  title: "CIE 1976 lightness",
  source: {
    name: "CIE e-ILV 17-23-076; IEC 60050-845-23-076; ISO/CIE 11664-4",
    edition: "2020",
    clause: "definition",
    how: "seen",
    where: "both vocabularies opened; pairs computed",
  },
  columns: ["Y_over_Yn", "L_star"],
  rows: [
    [0.001, 0.903],
    [0.005, 4.516],
    [0.008856, 8.0],
    [0.01, 8.991],
    [0.02, 15.487],
    [0.05, 26.735],
    [0.1, 37.842],
    [0.18, 49.496],
    [0.2, 51.837],
    [0.25, 57.075],
    [0.5, 76.069],
    [0.75, 89.393],
    [1, 100.0],
  ],
  notes: [
    "L* = 116*(Y/Yn)^(1/3) - 16 above (6/29)^3 = 0.008856; below, L* = 116*((841/108)(Y/Yn)+4/29) - 16 = 903.296*(Y/Yn).",
    "903.3 and 7.787 are rounded forms; with them the branches miss by under 0.001.",
  ],
};
