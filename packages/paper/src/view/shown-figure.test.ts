import { describe, expect, it } from "vitest";
import { shownFigure, shownGauge, shownSpan } from "./shown-figure.js";

describe("a figure on paper", () => {
  it("stands with how it is known, and with the instrument where one is named", () => {
    expect(shownFigure(5, "current", "us")).toEqual({ text: "5 A", under: "marked" });
    expect(shownFigure({ value: 3.1, basis: "measured", by: "clamp meter" }, "current", "us").under).toBe(
      "measured, clamp meter",
    );
  });

  it("is a question where nobody knows it", () => {
    expect(shownFigure(undefined, "length", "us")).toEqual({ text: "?", under: "not known" });
    expect(shownGauge(undefined, undefined, "us")).toEqual({ text: "?", under: "not seen" });
  });

  it("writes a span with its unit once, and next to nothing as 0", () => {
    expect(shownSpan({ lo: 11.8, hi: 12.4 }, "voltage", "us")).toBe("11.8 to 12.4 V");
    expect(shownSpan({ lo: 1e-9, hi: 0.5 }, "current", "us")).toBe("0 to 0.5 A");
  });

  it("keeps both units where they differ", () => {
    expect(shownSpan({ lo: 0.05, hi: 0.5 }, "current", "us")).toBe("50 mA to 0.5 A");
  });
});
