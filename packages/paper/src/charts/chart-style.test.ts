import { describe, expect, it } from "vitest";
import { CHART_THEMES, MARGINS, PALETTES, patternsOf, strokesOf } from "./chart-style.js";

/** Relative luminance and contrast ratio, WCAG 2.2, definitions. */
const luminance = (colour: string): number => {
  const [r, g, b] = [1, 3, 5].map((at) => {
    const value = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r! + 0.7152 * g! + 0.0722 * b!;
};
const contrast = (a: string, b: string): number => {
  const [light, dark] = [luminance(a), luminance(b)].sort((p, q) => q - p);
  return (light! + 0.05) / (dark! + 0.05);
};

describe("the style of charts", () => {
  it.each(CHART_THEMES)(
    "%s: words stand out 4.5 to 1 from the sheet and its washes, lines 3 to 1 (WCAG 2.2)",
    (theme) => {
      const { sheet, wash, copperWash, ink, soft, copper, margin } = PALETTES[theme];
      for (const ground of [sheet, wash, copperWash])
        for (const words of [ink, soft, margin.fails]) expect(contrast(words, ground)).toBeGreaterThanOrEqual(4.5);
      for (const line of [copper, ...Object.values(margin)]) expect(contrast(line, sheet)).toBeGreaterThanOrEqual(3);
    },
  );

  it("tells the four margins apart without colour: in print no two lines and no two fills are drawn alike", () => {
    const print = PALETTES.print;
    const lines = MARGINS.map((margin) => strokesOf("M0 0h9", margin, print, "p"));
    expect(new Set(lines).size).toBe(MARGINS.length);
    const fills = [...patternsOf(print, "p").matchAll(/<pattern id="[^"]*"([^>]*)>(.*?)<\/pattern>/g)].map(
      ([, how, content]) => `${how}${content}`,
    );
    expect(fills.length).toBeGreaterThanOrEqual(MARGINS.length);
    expect(new Set(fills).size).toBe(fills.length);
  });

  it("prints in black and greys only", () => {
    const colours = JSON.stringify(PALETTES.print).match(/#[0-9a-f]{6}/g) ?? [];
    for (const colour of colours)
      expect([colour.slice(1, 3), colour.slice(3, 5)]).toEqual([colour.slice(3, 5), colour.slice(5, 7)]);
  });
});
