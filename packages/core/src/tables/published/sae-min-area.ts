import type { PublishedTable } from "../table.js";

export const saeMinArea: PublishedTable = {
  id: "sae-min-area",
  title: "Minimum conductor area: SAE gauge against AWG",
  source: {
    name: "SAE J1128 / J1127 sizes as used by ABYC E-11",
    edition: "as reprinted",
    clause: "minimum circular-mil area",
    how: "seen",
    where: "a 2023 public reprint listing AWG and SAE circular-mil areas side by side; neither SAE standard opened",
  },
  columns: ["gauge", "awg_cmil", "sae_min_cmil", "sae_min_mm2", "sae_over_awg"],
  rows: [
    ["18", 1620, 1537, 0.779, 0.9488],
    ["16", 2580, 2336, 1.184, 0.9054],
    ["14", 4110, 3702, 1.876, 0.9007],
    ["12", 6530, 5833, 2.956, 0.8933],
    ["10", 10380, 9343, 4.734, 0.9001],
    ["8", 16510, 14810, 7.504, 0.897],
    ["6", 26240, 24538, 12.434, 0.9351],
    ["4", 41740, 37360, 18.931, 0.8951],
    ["2", 66360, 62450, 31.644, 0.9411],
    ["1", 83690, 77790, 39.417, 0.9295],
    ["1/0", 105600, 98980, 50.154, 0.9373],
    ["2/0", 133100, 125100, 63.389, 0.9399],
    ["3/0", 167800, 158600, 80.364, 0.9452],
    ["4/0", 211600, 205500, 104.128, 0.9712],
  ],
  notes: ["An SAE-gauge wire holds 3..11 % less copper than the same AWG number (12 AWG: 5833 against 6530 cmil)."],
};
