import { beforeAll, describe, expect, it } from "vitest";
import { isDrawable } from "../document/drawable-text.js";
import { measureLatin, measureWith } from "../drawings/measure.js";
import { loadPaperEngine } from "./load.js";
import { readTypeface, type Typeface } from "./typeface.js";

describe("the shipped typefaces", () => {
  let faces: readonly Typeface[];
  beforeAll(async () => {
    faces = (await loadPaperEngine()).typefaces;
  }, 180_000);

  it("draw every sign that our own words and drawings use", () => {
    const own = "·–—‘’“”•…≤≥±×÷°²³µΩ→←↑↓▲▼■□✓≈−½¼⅛²àéîöüßñçøåÆŒ€£";
    const missing = [...own].filter((sign) => !isDrawable(sign.codePointAt(0)!, faces));
    expect(missing).toEqual([]);
  });

  it("hold no glyph for a script that they do not claim", () => {
    expect(faces.some((face) => face.has(0x12000))).toBe(false);
    expect(faces.some((face) => face.has(0x4e00))).toBe(false);
  });

  it("know faces and Hebrew and Arabic letters by their fallbacks", () => {
    for (const code of [0x1f6b0, 0x1f600, 0x05d0, 0x0645]) expect(isDrawable(code, faces)).toBe(true);
  });

  it("are never wider than the plain measure says, and at most 2 % of the type size narrower for letters", () => {
    const exact = measureWith(faces);
    for (let code = 0x20; code < 0x7f; code++) {
      const sign = String.fromCharCode(code);
      for (const isStrong of [false, true]) {
        expect(measureLatin(sign, isStrong) - exact(sign, isStrong), sign).toBeGreaterThanOrEqual(-1e-9);
        expect(measureLatin(sign, isStrong) - exact(sign, isStrong), sign).toBeLessThan(0.02);
      }
    }
  });

  it("refuse a file that is no typeface", () => {
    expect(() => readTypeface(new Uint8Array(64))).toThrow("typeface-table");
  });
});
