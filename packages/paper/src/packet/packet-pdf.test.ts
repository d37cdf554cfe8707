import { beforeAll, describe, expect, it } from "vitest";
import { type ReadPdf, readPdf } from "../../testing/read-pdf.js";
import { loadPaperEngine } from "../engine/load.js";
import type { PaperEngine } from "../engine/paper-engine.js";
import { packetPdf } from "./packet-pdf.js";
import { smallPacket } from "./small-packet.js";

const TOLERANCE_MM = 0.1;

describe("the packet as a PDF", () => {
  let engine: PaperEngine;
  let bytes: Uint8Array;
  let pdf: ReadPdf;

  beforeAll(async () => {
    engine = await loadPaperEngine();
    const setting = await packetPdf(engine, smallPacket());
    if (setting.kind === "refused") throw new Error(setting.faults.join("\n"));
    bytes = setting.pdf;
    pdf = await readPdf(bytes);
  }, 180_000);

  it("has a title, a language, tags and a bookmark for every chapter", () => {
    expect(pdf.title).toBe("Marsh Wren: work packet, Make the saloon and berth lights dim");
    expect(pdf.language).toBe("en");
    expect(pdf.isTagged).toBe(true);
    expect(pdf.bookmarks).toEqual([
      "Job sheet",
      "Proposal and estimate",
      "Prepare",
      "Make it dead",
      "Exchange",
      "Bring power back",
      "Old pin to new pin",
      "Fuse labels at true size",
      "Test sheet",
      "Still open",
    ]);
  });

  it("says in words what every drawing shows", () => {
    const figures = pdf.pages.flatMap((page) => page.tags).filter((tag) => tag.role === "Figure");
    expect(figures.map((figure) => figure.alt)).toEqual([
      "Module A, saloon locker: bank of 4 switches, ON is up; switch 1 OFF, switch 2 ON, switch 3 ON, switch 4 not known.",
    ]);
  });

  it("says before the estimate which wire goes where, with which fuse", () => {
    const said = pdf.text.replace(/\s+/g, " ");
    expect(said).toContain("Wires to move");
    expect(said).toContain("Galley window shade");
    expect(said.indexOf("C, bath bay, channel 7")).toBeGreaterThan(said.indexOf("C, bath bay, channel 2"));
  });

  it("sets each caution inside its step, before the step that follows", () => {
    const steps = pdf.text.slice(pdf.text.indexOf("Exchange"));
    const at = (words: string) => {
      const place = steps.indexOf(words);
      expect(place, words).toBeGreaterThanOrEqual(0);
      return place;
    };
    expect(at("Unplug harness 1")).toBeLessThan(at("stays live from the inverter"));
    expect(at("stays live from the inverter")).toBeLessThan(at("Close the battery switch"));
    expect(at("Close the battery switch")).toBeLessThan(at("The shade can move"));
  });

  it("says what forbids power on the job sheet and again before the first step that brings power back", () => {
    expect(pdf.pages[0]!.text.replace(/\s+/g, " ")).toContain("must be put right before power comes back");
    const energise = pdf.text.slice(pdf.text.lastIndexOf("Bring power back"));
    const stop = energise.indexOf("Do not energise before this is put right.");
    expect(stop).toBeGreaterThanOrEqual(0);
    expect(stop).toBeLessThan(energise.indexOf("Close the battery switch"));
  });

  it("marks every page of an invented coach as invented", () => {
    for (const page of pdf.pages) expect(page.text).toContain("Invented coach");
  });

  it("draws every label at the width, height and pitch asked, within 0.1 mm", async () => {
    const page = pdf.pages.find((one) => one.text.includes("Fuse labels at true size") && one.text.includes("100 mm"))!;
    const boxes = await page.boxes();
    for (const strip of smallPacket().strips) {
      const labels = boxes.filter(
        (box) =>
          Math.abs(box.widthMm - strip.widthMm) <= TOLERANCE_MM &&
          Math.abs(box.heightMm - strip.heightMm) <= TOLERANCE_MM,
      );
      expect(labels).toHaveLength(strip.labels.length);
      labels.slice(1).forEach((box, i) => {
        expect(Math.abs(box.xMm - labels[i]!.xMm - strip.pitchMm)).toBeLessThanOrEqual(TOLERANCE_MM);
      });
    }
  });

  it("prints a ruler of 100 mm and one of 4 in at true size", async () => {
    const page = pdf.pages.find((one) => one.text.includes("100 mm"))!;
    const lines = (await page.boxes()).filter((box) => box.heightMm < 0.01).map((box) => box.widthMm);
    expect(lines.some((width) => Math.abs(width - 100) <= TOLERANCE_MM)).toBe(true);
    expect(lines.some((width) => Math.abs(width - 101.6) <= TOLERANCE_MM)).toBe(true);
  });

  it("keeps every line inside the page", () => {
    for (const page of pdf.pages)
      for (const run of page.runs) {
        expect(run.leftMm, run.text).toBeGreaterThan(10);
        expect(run.rightMm, run.text).toBeLessThan(page.widthMm - 10);
      }
  });

  it("gives the same bytes for the same input", async () => {
    const again = await packetPdf(engine, smallPacket());
    expect(again.kind === "set" && Buffer.compare(Buffer.from(again.pdf), Buffer.from(bytes))).toBe(0);
  });

  it("sets on A4 when the paper is A4", async () => {
    const view = smallPacket();
    const setting = await packetPdf(engine, { ...view, head: { ...view.head, paper: "a4" } });
    if (setting.kind === "refused") throw new Error(setting.faults.join("\n"));
    const [page] = (await readPdf(setting.pdf)).pages;
    expect(page!.widthMm).toBeCloseTo(210, 1);
    expect(page!.heightMm).toBeCloseTo(297, 1);
  });

  it("stands with nothing in it, and says so", async () => {
    const view = smallPacket();
    const setting = await packetPdf(engine, {
      ...view,
      job: { title: "Survey only" },
      proposed: { statement: [], modules: [], dims: [], unmet: [] },
      estimate: { lines: [], totals: [], notes: [] },
      parts: [],
      tools: [],
      isolation: [],
      sections: [{ code: "isolate", title: "Make it dead", steps: smallPacket().sections[1]!.steps }],
      pinMaps: [],
      switchCards: [],
      fuseChanges: [],
      wireChanges: [],
      strips: [],
      labelWants: [],
      testMethods: [],
      tests: [],
      open: [],
      sources: [],
    });
    if (setting.kind === "refused") throw new Error(setting.faults.join("\n"));
    const empty = await readPdf(setting.pdf);
    expect(empty.text).toContain("No module is touched.");
    expect(empty.text).toContain("The record names no source.");
  });
});
