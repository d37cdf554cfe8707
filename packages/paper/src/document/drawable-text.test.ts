import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Typeface } from "../engine/typeface.js";
import { drawableText, isDrawable } from "./drawable-text.js";

/** A face that draws plain ASCII and nothing else. */
const ascii: Typeface = { has: (code) => code >= 0x20 && code < 0x7f, advance: () => 0.5 };

describe("drawable text", () => {
  it("writes a sign that no face can draw as its code point", () => {
    expect(drawableText("a☃b", [ascii])).toBe("a[U+2603]b");
    expect(drawableText("\u{1F6B0}", [ascii])).toBe("[U+1F6B0]");
  });

  it("turns tabs and control signs into spaces and keeps line breaks", () => {
    expect(drawableText("a\tb\u0000c\r\nd", [ascii])).toBe("a b c\nd");
  });

  it("names a broken half of a surrogate pair instead of passing it on", () => {
    expect(drawableText("a\ud83d", [ascii])).toBe("a[U+FFFD]");
  });

  it("leaves nothing undrawable in any text whatsoever", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary" }), (text) => {
        for (const sign of drawableText(text, [ascii])) expect(isDrawable(sign.codePointAt(0)!, [ascii])).toBe(true);
      }),
      { seed: 20260502, numRuns: 2000 },
    );
  });
});
