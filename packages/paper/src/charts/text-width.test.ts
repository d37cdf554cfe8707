import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readTypeface } from "../engine/typeface.js";
import { linesWithin, textWidthPx } from "./text-width.js";

const face = (name: string) =>
  readTypeface(new Uint8Array(readFileSync(fileURLToPath(new URL(`../../fonts/${name}.ttf`, import.meta.url)))));

describe("the width of words whose face is not known", () => {
  it.each([
    ["DejaVuSans", false],
    ["AtkinsonHyperlegibleNext-Regular", false],
    ["AtkinsonHyperlegibleNext-Bold", true],
  ] as const)("is never less than in %s", (name, isStrong) => {
    const typeface = face(name);
    const signs = [..."·–—≤≥×±µΩ²°½†…→"].filter((sign) => typeface.has(sign.codePointAt(0)!));
    for (let code = 0x20; code < 0x7f; code++) signs.push(String.fromCharCode(code));
    const under = signs.filter(
      (sign) => textWidthPx(sign, 1, isStrong) < typeface.advance(sign.codePointAt(0)!)! - 1e-9,
    );
    expect(under).toEqual([]);
  });

  it("is close to the fallback face for plain words", () => {
    const typeface = face("DejaVuSans");
    const text = "Opens on that short in 25 to 100 ms";
    const real = [...text].reduce((sum, sign) => sum + typeface.advance(sign.codePointAt(0)!)!, 0);
    expect(textWidthPx(text, 1)).toBeGreaterThanOrEqual(real);
    expect(textWidthPx(text, 1)).toBeLessThan(real * 1.06);
  });

  it("keeps every sign of a text when it is broken, and no line is wider than the room", () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 120 }), fc.integer({ min: 40, max: 400 }), (text, room) => {
        const lines = linesWithin(text, room, 13);
        expect(lines.join("").replace(/\s/g, "")).toBe(text.replace(/\s/g, ""));
        for (const line of lines) expect(textWidthPx(line, 13)).toBeLessThanOrEqual(room);
      }),
      { seed: 11 },
    );
  });

  it("keeps a value and its unit on one line", () => {
    for (let room = 60; room < 220; room += 4)
      expect(linesWithin("reserve reached after 5.2 to 6.9 h at 60 % charge", room, 13).join("|")).not.toMatch(
        /6\.9\||60\|/,
      );
  });
});
