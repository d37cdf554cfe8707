import type { Outcome } from "@fusebook/core/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { chargeData, doubtData, frontData, rampData, timeCurrentData } from "../../testing/chart-samples.js";
import { type SvgWords, svgFaults, svgSaid, svgSize, svgWords } from "../../testing/read-svg.js";
import {
  CHART_THEMES,
  type ChartLook,
  chargeChart,
  doubtChart,
  frontChart,
  rampChart,
  timeCurrentChart,
} from "./index.js";
import { textWidthPx } from "./text-width.js";

const look: fc.Arbitrary<ChartLook> = fc.record({
  widthPx: fc.constantFrom(320, 360, 390, 560, 768, 900, 1200),
  theme: fc.constantFrom(...CHART_THEMES),
});

interface Box {
  readonly words: SvgWords;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** From the top of a capital to the foot of a letter that hangs below the line. */
const boxOf = (words: SvgWords): Box => {
  const w = textWidthPx(words.text, words.sizePx, words.isStrong);
  const left = words.anchor === "middle" ? words.x - w / 2 : words.anchor === "end" ? words.x - w : words.x;
  return { words, left, right: left + w, top: words.y - 0.76 * words.sizePx, bottom: words.y + 0.24 * words.sizePx };
};

function overlapsIn(svg: string): string[] {
  const boxes = svgWords(svg)
    .map(boxOf)
    .sort((a, b) => a.top - b.top);
  const found: string[] = [];
  for (const [i, a] of boxes.entries())
    for (let k = i + 1; k < boxes.length && boxes[k]!.top < a.bottom; k++) {
      const b = boxes[k]!;
      if (a.left < b.right && b.left < a.right) found.push(`"${a.words.text}" and "${b.words.text}"`);
    }
  return found;
}

function outsideOf(svg: string): string[] {
  const { widthPx, heightPx } = svgSize(svg);
  return svgWords(svg)
    .map(boxOf)
    .filter((box) => !(box.left >= 0 && box.right <= widthPx + 0.01 && box.top >= 0 && box.bottom <= heightPx))
    .map((box) => box.words.text);
}

const pictureOf = (outcome: Outcome<string>): string => {
  if (outcome.kind !== "known") throw new Error(JSON.stringify(outcome));
  return outcome.value;
};

function holdsFor<T>(data: fc.Arbitrary<T>, chart: (data: T, look: ChartLook) => Outcome<string>): void {
  fc.assert(
    fc.property(data, look, (asked, how) => {
      const svg = pictureOf(chart(asked, how));
      expect(svgFaults(svg)).toEqual([]);
      expect(overlapsIn(svg)).toEqual([]);
      expect(outsideOf(svg)).toEqual([]);
      expect(Math.min(...svgWords(svg).map((words) => words.sizePx))).toBeGreaterThanOrEqual(12);
      expect(svgSaid(svg, "title").length).toBeGreaterThan(0);
      expect(svgSaid(svg, "desc").length).toBeGreaterThan(0);
      expect(pictureOf(chart(asked, how))).toBe(svg);
    }),
    { seed: 20260509, numRuns: 60 },
  );
}

describe("every chart, whatever is asked of it, is whole XML whose words keep apart, keep inside and are 12 px or more", () => {
  it("time and current", () => holdsFor(timeCurrentData, timeCurrentChart));
  it("charge", () => holdsFor(chargeData, chargeChart));
  it("ramp", () => holdsFor(rampData, rampChart));
  it("front", () => holdsFor(frontData, frontChart));
  it("doubt", () => holdsFor(doubtData, doubtChart));
});
