import { describe, expect, it } from "vitest";
import { doorMap } from "./door-map.js";
import { fusePatch } from "./fuse-patch.js";
import { lineDiagram } from "./line-diagram.js";
import { loomPicture } from "./loom-picture.js";
import { measureLatin } from "./measure.js";
import { type ModuleSheet, moduleSheet } from "./module-sheet.js";
import { type SwitchCard, switchCard } from "./switch-card.js";

const card = (more: Partial<SwitchCard> = {}): SwitchCard => ({
  title: "Module A",
  subtitle: "kind",
  onIs: "up",
  switches: [
    { number: 1, printed: "1", position: "on", does: "address" },
    { number: 2, printed: "2", position: "off", does: "address" },
    { number: 3, printed: "3", position: "unknown", does: "not known" },
  ],
  gives: ["Address 3"],
  ...more,
});

/** Left top corners of the filled handles, in the drawing's own order. */
const handles = (svg: string) =>
  [...svg.matchAll(/<rect x="([\d.]+)" y="([\d.]+)"[^>]*fill="#1a2129"/g)].map(([, x, y]) => ({
    x: Number(x),
    y: Number(y),
  }));

const hostile = 'a <b> & "c" \u0007 #panic("x")';

describe("the switch card", () => {
  it.each([
    ["up", (on: { y: number }, off: { y: number }) => on.y < off.y],
    ["down", (on: { y: number }, off: { y: number }) => on.y > off.y],
  ] as const)("puts the handle of a switch that is ON at the ON end, ON being %s", (onIs, isRight) => {
    const [on, off] = handles(switchCard(card({ onIs }), measureLatin).svg);
    expect(isRight(on!, off!)).toBe(true);
  });

  it.each([
    ["left", (on: { x: number }, off: { x: number }) => on.x < off.x],
    ["right", (on: { x: number }, off: { x: number }) => on.x > off.x],
  ] as const)("lays the bank down where ON is to the %s", (onIs, isRight) => {
    const [on, off] = handles(switchCard(card({ onIs }), measureLatin).svg);
    expect(isRight(on!, off!)).toBe(true);
  });

  it("shows no handle, but a question mark, where a position is not known", () => {
    const { svg } = switchCard(card(), measureLatin);
    expect(handles(svg)).toHaveLength(2);
    expect(svg).toContain(">?<");
  });

  it("does not say which way is ON where nobody looked", () => {
    const { svg, alt } = switchCard(card({ onIs: undefined }), measureLatin);
    expect(svg).toContain("look on the part");
    expect(alt).toContain("which way is ON is not known");
  });
});

describe("the module sheet", () => {
  const row = (channel: number, margin: ModuleSheet["rows"][number]["margin"], currentA: number) => ({
    channel,
    fuse: fusePatch(5, "tan"),
    wire: "16 AWG, 12 ft",
    currentA,
    amps: `${currentA} A`,
    margin,
    loads: hostile,
    note: "",
  });
  const sheet = (rows: ModuleSheet["rows"]): ModuleSheet => ({
    title: "M",
    positions: "01?",
    onIs: "up",
    rows,
    dimmed: new Set([1]),
  });

  it("draws a wire wider the more amps it carries", () => {
    const heights = [3, 9].map((currentA) => {
      const { svg } = moduleSheet(sheet([row(1, "ample", currentA)]), measureLatin);
      return Number(/height="([\d.]+)" fill="#2c6a58"/.exec(svg)?.[1]);
    });
    expect(heights[1]! / heights[0]!).toBeCloseTo(3, 1);
  });

  it("tells the margins apart without colour", () => {
    const shapes = (["ample", "tight", "fails", "open", "spare"] as const).map((margin) => {
      const { svg } = moduleSheet(sheet([row(1, margin, 3)]), measureLatin);
      // The wire alone: what is drawn between the box and the fuse, colours taken out.
      const body = svg.slice(svg.indexOf("</defs>"), svg.indexOf("over its limit"));
      return body.replace(/#[0-9a-f]{6}/g, "");
    });
    expect(new Set(shapes).size).toBe(5);
  });

  it("keeps hostile text as text", () => {
    const { svg } = moduleSheet(sheet([row(1, "ample", 1)]), measureLatin);
    expect(svg).not.toContain("<b>");
    expect(svg).toContain("&lt;b&gt;");
    expect(svg).not.toContain("\u0007");
  });
});

describe("the fuse map", () => {
  const group = (title: string, count: number) => ({
    title,
    subtitle: "R8",
    fuses: Array.from({ length: count }, (_, i) => ({
      number: String(i + 1),
      patch: fusePatch(5, "tan"),
      feeds: `${title} load ${i + 1}`,
    })),
  });

  it("shows every fuse once, however many sheets it takes", () => {
    const groups = Array.from({ length: 25 }, (_, i) => group(`M${i}`, 1 + ((i * 7) % 13)));
    const sheets = doorMap(groups, 200, measureLatin);
    const all = sheets.map((sheet) => sheet.svg).join("");
    for (const { title, fuses } of groups)
      for (const fuse of fuses) expect(all.split(`>${fuse.feeds}<`).length - 1, title).toBe(1);
    for (const sheet of sheets)
      expect(Number(/viewBox="0 0 176 ([\d.]+)"/.exec(sheet.svg)?.[1])).toBeLessThanOrEqual(202);
  });

  it("is empty for a coach without fuses", () => {
    expect(doorMap([], 200, measureLatin)).toEqual([]);
  });
});

describe("drawings of a coach without figures", () => {
  it("leave the single-line diagram out where there is no source", () => {
    expect(lineDiagram([], [], measureLatin).drawing).toBeUndefined();
  });

  it("leave the loom out where no amps are known", () => {
    expect(
      loomPicture(
        { battery: ["Battery"], bundles: [{ name: "A", circuits: [{ currentA: undefined, margin: "open" }] }] },
        measureLatin,
      ),
    ).toBeUndefined();
  });
});

describe("a blade fuse", () => {
  it("prints the number on a white patch where the standard lists no colour", () => {
    expect(fusePatch(60, undefined)).toEqual({ patch: "60", fill: "#ffffff", ink: "#000000" });
    expect(fusePatch(undefined, undefined).patch).toBe("?");
  });
});
