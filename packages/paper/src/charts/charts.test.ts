import { readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { Invariant, type Outcome } from "@fusebook/core/quantity";
import { describe, expect, it } from "vitest";
import { svgFaults, svgSaid, svgWords } from "../../testing/read-svg.js";
import {
  type ChargeData,
  chargeChart,
  type DoubtData,
  doubtChart,
  type RampData,
  rampChart,
  type TimeCurrentData,
  timeCurrentChart,
} from "./index.js";

const timeCurrent: TimeCurrentData = {
  title: "Galley under",
  fuses: [
    {
      label: "10 A blade fuse",
      isFromMemory: true,
      fastest: [
        [13.5, 0.75],
        [60, 0.03],
      ],
      slowest: [
        [13.5, 600],
        [60, 0.1],
      ],
    },
  ],
  load: { label: "Lamps", currentA: { lo: 2, hi: 2 } },
  conductors: [
    {
      label: "18 AWG",
      margin: "ample",
      points: [
        [94.6, 1],
        [946, 0.01],
      ],
    },
  ],
  prospective: { label: "Dead short", currentA: { lo: 60, hi: 75 } },
};
const charge: ChargeData = {
  title: "Evening",
  runs: [
    {
      label: "As it is",
      points: [
        [0, 1],
        [10, 0],
      ],
      hoursToReserve: { lo: 4, hi: 6 },
    },
  ],
  reserve: { label: "Reserve 50 %", chargeRatio: 0.5 },
};
const ramp: RampData = {
  title: "Ramp",
  ramps: [
    {
      label: "Even",
      steps: [
        { step: 1, dutyRatio: 0.18, lightness: 50 },
        { step: 2, dutyRatio: 1, lightness: 100 },
      ],
    },
  ],
};
const doubt: DoubtData = {
  title: "Drop",
  quantity: {
    label: "drop",
    unit: "%",
    exact: { lo: 2, hi: 12 },
    quantiles: [
      { ratio: 0.05, value: 4 },
      { ratio: 0.95, value: 10 },
    ],
    limit: { label: "lamps", value: 9, sense: "at most" },
    failsRatio: 0.2,
  },
  readings: [{ label: "Clamp it", minutes: 2, shrinkRatio: 0.6, shrinkPerMinute: 0.3 }],
};

const pictureOf = (outcome: Outcome<string>): string => {
  if (outcome.kind !== "known") throw new Error(JSON.stringify(outcome));
  return outcome.value;
};

describe("a picture in time and current", () => {
  const svg = pictureOf(timeCurrentChart(timeCurrent));
  const tickX = (text: string): number =>
    svgWords(svg).find((words) => words.text === text && words.anchor === "middle")!.x;

  it("draws a current where its tick stands: 2 A under the load's upright", () => {
    expect(svg).toContain(`M${tickX("2")} `);
  });

  it("puts the same ratio of currents the same way apart, and draws curves through their points", () => {
    expect(tickX("100") - tickX("10")).toBeCloseTo(tickX("10") - tickX("1"), 1);
    const x94 = tickX("10") + Math.log10(9.46) * (tickX("100") - tickX("10"));
    const starts = [...svg.matchAll(/d="M([\d.]+) /g)].map(([, x]) => Number(x));
    expect(Math.min(...starts.map((x) => Math.abs(x - x94)))).toBeLessThan(0.01);
  });

  it("says beside the curve and in the caption what is from memory", () => {
    const text = svgWords(svg)
      .map((words) => words.text)
      .join(" ");
    expect(text).toContain("from memory");
    expect(text).toContain("From memory, not from a source that was seen: 10 A blade fuse.");
    expect(svgSaid(svg, "desc")).toContain("10 A blade fuse (from memory)");
  });

  it("draws a fuse of which only one gate is known as that one line", () => {
    const one = { ...timeCurrent, fuses: [{ label: "Link", slowest: timeCurrent.fuses[0]!.slowest! }] };
    expect(svgFaults(pictureOf(timeCurrentChart(one)))).toEqual([]);
  });
});

describe("words from a record", () => {
  it.each([
    ["timeCurrent", (title: string) => timeCurrentChart({ ...timeCurrent, title })],
    ["charge", (title: string) => chargeChart({ ...charge, title })],
    ["ramp", (title: string) => rampChart({ ...ramp, title })],
    ["doubt", (title: string) => doubtChart({ ...doubt, title })],
  ])("%s: signs of XML and of scripts are drawn as they are and do nothing", (_, chart) => {
    const title = '"A" < B & C > <script>alert(1)</script>';
    const svg = pictureOf(chart(title));
    expect(svgFaults(svg)).toEqual([]);
    expect(svg).not.toContain("<script");
    expect(svgSaid(svg, "title")).toBe(title);
  });
});

describe("what cannot be drawn is refused, with the place and the remedy", () => {
  const cases: readonly (readonly [string, Outcome<string>, string, RegExp])[] = [
    [
      "zero on a logarithmic axis",
      timeCurrentChart({ ...timeCurrent, load: { label: "Lamps", currentA: { lo: 0, hi: 2 } } }),
      "chart-log-axis",
      /Lamps, low end: 0 has no place/,
    ],
    [
      "a gate of one point",
      timeCurrentChart({ ...timeCurrent, fuses: [{ label: "Link", fastest: [[1, 1]] }] }),
      "chart-curve-empty",
      /Link, fastest gate: wanted at least 2 points, got 1/,
    ],
    [
      "a fuse without gates",
      timeCurrentChart({ ...timeCurrent, fuses: [{ label: "Link" }] }),
      "chart-curve-empty",
      /Link/,
    ],
    [
      "nothing at all",
      timeCurrentChart({ title: "x", fuses: [] }),
      "chart-empty",
      /wanted a fuse, a conductor or a current/,
    ],
    [
      "not a number",
      chargeChart({
        ...charge,
        runs: [
          {
            label: "As it is",
            points: [
              [0, 1],
              [Number.NaN, 0],
            ],
          },
        ],
      }),
      "chart-number",
      /As it is, point 2, across: wanted a number, got NaN/,
    ],
    [
      "without end",
      chargeChart({
        ...charge,
        runs: [{ ...charge.runs[0]!, hoursToReserve: { lo: 4, hi: Number.POSITIVE_INFINITY } }],
      }),
      "chart-number",
      /hours to the reserve, high end/,
    ],
    [
      "a span the wrong way round",
      doubtChart({ ...doubt, quantity: { ...doubt.quantity!, exact: { lo: 3, hi: 2 } } }),
      "chart-span-inverted",
      /from 3 to 2 is the wrong way round/,
    ],
    ["no words", rampChart({ ...ramp, title: "  " }), "chart-words", /title: wanted words/],
    ["no ramp", rampChart({ ...ramp, ramps: [] }), "chart-empty", /at least one ramp/],
  ];
  it.each(cases)("%s", (_, outcome, code, because) => {
    expect(outcome).toMatchObject({ kind: "refused", code });
    if (outcome.kind === "refused") expect(outcome.because).toMatch(because);
  });

  it("an impossible width or theme is a fault of our own code", () => {
    expect(() => rampChart(ramp, { widthPx: 10 })).toThrow(Invariant);
    expect(() => rampChart(ramp, { theme: "dusk" as never })).toThrow(Invariant);
  });
});

describe("the charts", () => {
  it("keep their patterns apart when several stand in one page", () => {
    const ids = [timeCurrentChart(timeCurrent), chargeChart(charge), rampChart(ramp), doubtChart(doubt)].map(
      (outcome) => [...pictureOf(outcome).matchAll(/\sid="([^"]+)"/g)].map(([, id]) => id!),
    );
    const all = ids.flat();
    expect(new Set(all).size).toBe(all.length);
  });

  it("load no typesetter: nothing they import reaches one", () => {
    const seen = new Set<string>();
    const outside = new Set<string>();
    const visit = (file: string): void => {
      if (seen.has(file)) return;
      seen.add(file);
      const code = readFileSync(file, "utf8").replace(/^(?:import|export) type .*$/gm, "");
      for (const [, name] of code.matchAll(/(?:from|import)\s*\(?\s*"([^"]+)"/g))
        if (name!.startsWith(".")) visit(join(dirname(file), name!.replace(/\.js$/, ".ts")));
        else outside.add(name!);
    };
    visit(fileURLToPath(new URL("./index.ts", import.meta.url)));
    expect([...outside]).toEqual(["@fusebook/core/quantity"]);
    expect([...seen].filter((file) => file.includes("/engine/"))).toEqual([]);
  });
});
