import { checkRecord } from "@fusebook/core/findings";
import { type CoachRecord, indexRecord, readRecord } from "@fusebook/core/record";
import { demoRecord, demoRecordText, generateCoach } from "@fusebook/fixtures";
import { beforeAll, describe, expect, it } from "vitest";
import { type ReadPdf, readPdf } from "../../testing/read-pdf.js";
import { loadPaperEngine } from "../engine/load.js";
import type { PaperEngine } from "../engine/paper-engine.js";
import { bookViewOf } from "../view/book-view-of.js";
import { bookPdf } from "./book-pdf.js";

const utf8 = new TextEncoder();
const squeezed = (text: string) => text.replace(/[\s\u200b]+/g, "");

describe("the as-built book as a PDF", () => {
  let engine: PaperEngine;
  const viewOf = (record: CoachRecord, text = JSON.stringify(record)) => {
    const index = indexRecord(record);
    return bookViewOf({
      index,
      findings: checkRecord(index),
      recordBytes: utf8.encode(text),
      date: "2026-05-02",
      id: "book-1",
    });
  };
  const set = async (record: CoachRecord, text?: string): Promise<ReadPdf> => {
    const setting = await bookPdf(engine, viewOf(record, text));
    if (setting.kind === "refused") throw new Error(setting.faults.join("\n"));
    return readPdf(setting.pdf);
  };
  const isInside = (pdf: ReadPdf) => {
    for (const page of pdf.pages)
      for (const run of page.runs) {
        expect(run.leftMm, run.text).toBeGreaterThan(10);
        expect(run.rightMm, run.text).toBeLessThan(page.widthMm - 10);
      }
  };

  beforeAll(async () => {
    engine = await loadPaperEngine();
  }, 180_000);

  describe("of the demo coach", () => {
    let pdf: ReadPdf;
    beforeAll(async () => {
      pdf = await set(demoRecord(), demoRecordText());
    }, 180_000);

    it("names every load of the coach and every fuse of the panel on the fuse map", () => {
      const map = squeezed(pdf.pages.filter((page) => /Fuse map/.test(page.text)).slice(-1)[0]!.text);
      const fed = new Set((demoRecord().circuits ?? []).flatMap((circuit) => circuit.loads ?? []));
      for (const load of demoRecord().loads ?? []) if (fed.has(load.id)) expect(map).toContain(squeezed(load.name));
    });

    it("carries the record out again bit for bit, and it opens as a record", () => {
      const [name, bytes] = [...pdf.attachments][0]!;
      expect(name).toMatch(/\.fusebook\.json$/);
      expect(Buffer.compare(Buffer.from(bytes), Buffer.from(demoRecordText()))).toBe(0);
      expect(readRecord(JSON.parse(new TextDecoder().decode(bytes))).kind).not.toBe("refused");
    });

    it("has a bookmark for every module", () => {
      for (const module of demoRecord().modules ?? []) expect(pdf.bookmarks).toContain(module.name);
    });

    it("gives every drawing its words", () => {
      const figures = pdf.pages.flatMap((page) => page.tags).filter((tag) => tag.role === "Figure");
      expect(figures.length).toBeGreaterThanOrEqual(13);
      for (const figure of figures) expect(figure.alt?.length ?? 0).toBeGreaterThan(20);
    });

    it("keeps every line inside the page", () => isInside(pdf));

    it("says that nothing is proved while no reading is in", () => {
      expect(pdf.text).toContain("No proof has been taken.");
    });

    it("says which figures come from memory", () => {
      expect(pdf.text).toContain("from memory");
    });
  });

  it("stands for a coach with a name and nothing else, and says what is missing", async () => {
    const outcome = readRecord({ format: "fusebook/1", id: "bare", coach: { name: "Bare" } });
    if (outcome.kind === "refused") throw new Error("bare record refused");
    const pdf = await set(outcome.record);
    expect(pdf.text).toContain("The record holds no fuse yet.");
    expect(pdf.text).toContain("there is no diagram to draw");
  });

  it("stands for 200 circuits with faults in them, every line inside the page", async () => {
    const pdf = await set(generateCoach({ seed: 5, circuits: 200, faults: "every", missingRatio: 0.1 }).record);
    isInside(pdf);
  }, 240_000);

  it("stands for names of a hundred letters, other scripts, faces and markup", async () => {
    const record = demoRecord();
    const names = [
      `${"very long name of a lamp ".repeat(5)}end`,
      "מנורת קריאה",
      "\u{1F6BF} shower \u{1F4A7}",
      '#panic("x") $ * \\ @a <b>',
      "x".repeat(120),
    ];
    record.loads?.forEach((load, i) => {
      load.name = names[i % names.length]!;
    });
    record.modules?.forEach((module, i) => {
      module.name = names[i % names.length]!;
    });
    const pdf = await set(record);
    isInside(pdf);
    expect(squeezed(pdf.text)).toContain(squeezed('#panic("x") $ * \\ @a <b>'));
  });
});
