import type { PublishedTable } from "../table.js";

export const iec60228: PublishedTable = {
  id: "iec60228",
  title: "Maximum conductor resistance at 20 C, copper",
  source: {
    name: "IEC 60228",
    edition: "2004 (same values in 2023 ed. per secondary pages)",
    clause: "Tables 2 and 3",
    how: "seen",
    where: "four independent public reproductions agree; standard itself not opened",
  },
  columns: [
    "mm2",
    "class2_plain_ohm_km",
    "class2_tinned_ohm_km",
    "class5_plain_ohm_km",
    "class5_tinned_ohm_km",
    "implied_area_class5_mm2",
  ],
  rows: [
    [0.5, 36.0, 36.7, 39.0, 40.1, 0.442],
    [0.75, 24.5, 24.8, 26.0, 26.7, 0.663],
    [1.0, 18.1, 18.2, 19.5, 20.0, 0.884],
    [1.5, 12.1, 12.2, 13.3, 13.7, 1.296],
    [2.5, 7.41, 7.56, 7.98, 8.21, 2.161],
    [4, 4.61, 4.7, 4.95, 5.09, 3.483],
    [6, 3.08, 3.11, 3.3, 3.39, 5.225],
    [10, 1.83, 1.84, 1.91, 1.95, 9.027],
    [16, 1.15, 1.16, 1.21, 1.24, 14.249],
    [25, 0.727, 0.734, 0.78, 0.795, 22.104],
    [35, 0.524, 0.529, 0.554, 0.565, 31.122],
    [50, 0.387, 0.391, 0.386, 0.393, 44.667],
    [70, 0.268, 0.27, 0.272, 0.277, 63.387],
    [95, 0.193, 0.195, 0.206, 0.21, 83.696],
    [120, 0.153, 0.154, 0.161, 0.164, 107.089],
  ],
  notes: [
    "Class 5 at 50 mm2 (0.386) is LOWER than class 2 (0.387); not a typo.",
    "A conductor meeting the class-5 maximum has only 86..91 % of its nominal area as pure IACS copper: nominal mm2 must not be used with 1/58 as a worst case.",
  ],
};
