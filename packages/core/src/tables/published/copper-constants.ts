import type { PublishedTable } from "../table.js";

export const copperConstants: PublishedTable = {
  id: "copper-constants",
  title: "Copper and conductor constants",
  source: {
    name: "IACS / IEC 60028 / ASTM B258 / IEC 60949",
    how: "seen",
    where:
      "reproductions of NBS Handbook 100 (1966) and of IEC 60949 text; the B258 diameter law itself is recalled; it reproduces a wire table that was seen",
  },
  columns: ["quantity", "value", "unit", "how", "note"],
  rows: [
    [
      "IACS resistivity of annealed copper, 20 C",
      0.017241,
      "ohm*mm2/m",
      "seen",
      "NBS Handbook 100; 1/58 = 0.0172414; also 0.15328 ohm*g/m2 with density 8.89 g/cm3",
    ],
    ["IACS resistivity, circular-mil unit", 10.371, "ohm*cmil/ft", "computed", "1/58 ohm*mm2/m converted"],
    [
      "temperature coefficient of copper at 20 C",
      0.00393,
      "1/K",
      "seen",
      "public transcription of IEC 60287-1-1 Table 1 (0.00393, 1.7241e-8); a relay guide prints 0.003929; 1/(234.5+20)=0.0039293",
    ],
    [
      "inferred zero-resistance temperature",
      -234.5,
      "C",
      "seen",
      "IEC 60949 beta = 234.5; also AC 43.13-1B 11-66 L2 = 254.5*L1/(234.5+T2)",
    ],
    [
      "coefficient referred to 75 C, NEC usage",
      0.00323,
      "1/K",
      "seen",
      "R2 = R1*(1+0.00323*(T2-75)), note under NEC Ch. 9 Table 8 (secondary page)",
    ],
    ["ratio R(75 C)/R(20 C)", 1.21615, "-", "computed", "with 0.00393"],
    [
      "AWG diameter law",
      "d = 0.127*92^((36-n)/39)",
      "mm",
      "computed",
      "ASTM B258 (law recalled, text not opened); n = 0, -1, -2, -3 for 1/0..4/0; reproduces every seen diameter in the textbook wire table",
    ],
    ["1 circular mil", 0.000506707, "mm2", "computed", "5.067e-4"],
    ["1000 ft", 304.8, "m", "computed", "ohm/kft * 3.28084 = ohm/km"],
  ],
  notes: [],
};
