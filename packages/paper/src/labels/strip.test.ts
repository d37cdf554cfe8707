import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { measureLatin } from "../drawings/measure.js";
import { MIN_CONDENSED } from "../drawings/svg.js";
import { type LabelStrip, layStrip } from "./strip.js";

const stripOf = (texts: readonly string[], more: Partial<LabelStrip> = {}): LabelStrip => ({
  title: "Module A",
  pitchMm: 20,
  widthMm: 19,
  heightMm: 12,
  labels: texts.map((text, i) => ({ head: String(i + 1), text })),
  ...more,
});

const BODY_MM = 181.9;
const PT = 25.4 / 72;

describe("a strip of labels", () => {
  it("sets a short name as it is, neither condensed nor turned", () => {
    const { blocks, reports } = layStrip(stripOf(["Galley"]), BODY_MM, measureLatin);
    const [label] = blocks[0]!.labels;
    expect(label!.turned).toBe(false);
    expect(label!.lines.map((line) => line.text)).toEqual(["1", "Galley"]);
    expect(label!.lines.every((line) => line.ratio === 1)).toBe(true);
    expect(reports).toEqual([]);
  });

  it("turns the text along a label that is taller than wide", () => {
    const { blocks } = layStrip(
      stripOf(["Companionway"], { pitchMm: 8, widthMm: 8, heightMm: 30 }),
      BODY_MM,
      measureLatin,
    );
    expect(blocks[0]!.labels[0]!.turned).toBe(true);
  });

  it("reports a text that fits in no manner, shows its number alone and cuts nothing", () => {
    const text = "Tank heater of the fresh and the grey water tanks with thermostat";
    const { blocks, reports } = layStrip(
      stripOf([text], { pitchMm: 6, widthMm: 6, heightMm: 6 }),
      BODY_MM,
      measureLatin,
    );
    expect(reports).toEqual([{ strip: "Module A", head: "1", text }]);
    expect(blocks[0]!.labels[0]!.lines.map((line) => line.text)).toEqual(["1"]);
  });

  it("is cut into pieces of whole labels where it is longer than the page, each piece inside the page", () => {
    const { blocks } = layStrip(stripOf(Array.from({ length: 24 }, () => "x")), BODY_MM, measureLatin);
    expect(blocks.reduce((sum, block) => sum + block.labels.length, 0)).toBe(24);
    for (const block of blocks) expect((block.labels.length - 1) * 20 + 19 + 8).toBeLessThanOrEqual(BODY_MM);
    expect(blocks.length).toBe(3);
  });

  it("never loses a letter of a label that it does not report, and never condenses below what reads well", () => {
    const word = fc.string({ unit: fc.constantFrom(..."abcdefgHIJ-/0123456789"), minLength: 1, maxLength: 14 });
    const name = fc.array(word, { minLength: 1, maxLength: 7 }).map((words) => words.join(" "));
    fc.assert(
      fc.property(
        fc.array(name, { minLength: 1, maxLength: 12 }),
        fc.integer({ min: 5, max: 30 }),
        fc.integer({ min: 5, max: 40 }),
        (names, widthMm, heightMm) => {
          const strip = stripOf(names, { pitchMm: widthMm, widthMm, heightMm });
          const { blocks, reports } = layStrip(strip, BODY_MM, measureLatin);
          const reported = new Set(reports.map((report) => report.head));
          blocks
            .flatMap((block) => block.labels)
            .forEach((label, i) => {
              if (reported.has(String(i + 1))) return;
              const said = label.lines
                .map((line) => line.text)
                .join("")
                .replaceAll(" ", "");
              expect(said).toBe(`${i + 1}${names[i]}`.replaceAll(" ", ""));
              const along = label.turned ? heightMm : widthMm;
              for (const line of label.lines) {
                expect(line.ratio).toBeGreaterThanOrEqual(MIN_CONDENSED - 1e-6);
                expect(measureLatin(line.text, line.strong) * line.sizePt * PT * line.ratio).toBeLessThanOrEqual(along);
              }
              const high = label.lines.reduce((sum, line) => sum + line.heightMm, 0);
              expect(high).toBeLessThanOrEqual(label.turned ? widthMm : heightMm);
            });
        },
      ),
      { seed: 20260502, numRuns: 300 },
    );
  });
});
