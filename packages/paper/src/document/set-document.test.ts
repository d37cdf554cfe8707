import { beforeAll, describe, expect, it } from "vitest";
import { readPdf } from "../../testing/read-pdf.js";
import { loadPaperEngine } from "../engine/load.js";
import type { PaperEngine } from "../engine/paper-engine.js";
import type { Block, PaperDocument } from "./blocks.js";
import { setDocument } from "./set-document.js";

const HOSTILE = [
  '#panic("x")',
  '#import "/etc/passwd": *',
  "$ sum_(k=0)^n k $",
  "*bold* _under_ `raw` <label> @ref [link](x)",
  "C:\\temp\\new \\u{41} \\#",
  "// not a comment /* nor this */",
  "~ -- --- ... 'single' \"double\"",
  "{{ }} #{ } #[ ]",
];

const documentOf = (blocks: readonly Block[], more: Partial<PaperDocument> = {}): PaperDocument => ({
  title: "A title",
  description: "",
  language: "en",
  date: "2026-05-02",
  id: "id-1",
  paper: "letter",
  running: "running line",
  mark: "",
  blocks,
  enclosures: [],
  ...more,
});

describe("setting a document", () => {
  let engine: PaperEngine;
  const set = async (document: PaperDocument) => {
    const setting = await setDocument(engine, document);
    if (setting.kind === "refused") throw new Error(setting.faults.join("\n"));
    return setting.pdf;
  };
  const squeezed = (text: string) => text.replace(/[\s\u200b]+/g, "");

  beforeAll(async () => {
    engine = await loadPaperEngine();
  }, 180_000);

  it.each(HOSTILE)("prints %s as it was written, wherever it stands", async (text) => {
    const blocks: Block[] = [
      { block: "heading", level: 1, text },
      { block: "paragraph", text },
      { block: "caution", text },
      { block: "list", items: [text] },
      { block: "table", columns: [{ title: text, share: 1 }], rows: [[text], [{ text, under: text }]], empty: "" },
      {
        block: "step",
        number: 1,
        text,
        detail: text,
        cautions: [text],
        expect: [{ what: text, value: text, span: text, unit: "V" }],
        lamps: [text],
        rollBack: text,
      },
      { block: "facts", pairs: [[text, text]] },
    ];
    const pdf = await readPdf(await set(documentOf(blocks, { title: text, running: text, mark: text })));
    const count = squeezed(pdf.text).split(squeezed(text)).length - 1;
    expect(count).toBeGreaterThanOrEqual(16);
    expect(pdf.title).toBe(text);
  });

  it("prints right-to-left words, signs and faces, and writes what no face can draw as its code point", async () => {
    const pdf = await readPdf(
      await set(documentOf([{ block: "paragraph", text: "water \u{1F6B0} ☃ → שלום مرحبا \u{12000} end" }])),
    );
    expect(pdf.text).toContain("\u{1F6B0}");
    expect(pdf.text).toContain("→");
    expect(pdf.text).toContain("[U+12000]");
    expect(squeezed(pdf.text)).toMatch(/שלום|םולש/);
    expect(pdf.text).not.toContain("\u{12000}");
  });

  it("breaks a word that is wider than its column instead of letting it run off", async () => {
    const long = "harness".repeat(40);
    const blocks: Block[] = [
      {
        block: "table",
        columns: [
          { title: "a", share: 1 },
          { title: "b", share: 4 },
        ],
        rows: [[long, long]],
        empty: "",
      },
    ];
    const pdf = await readPdf(await set(documentOf(blocks)));
    expect(squeezed(pdf.text).split("harness").length - 1).toBe(80);
    for (const page of pdf.pages) for (const run of page.runs) expect(run.rightMm).toBeLessThan(page.widthMm - 10);
  });

  it("carries an enclosure out again bit for bit", async () => {
    const bytes = Uint8Array.from({ length: 70_000 }, (_, i) => (i * 31 + (i >> 8)) & 255);
    const pdf = await readPdf(
      await set(
        documentOf([{ block: "paragraph", text: "x" }], {
          enclosures: [
            { name: "record.fusebook.json", mediaType: "application/json", description: "the record", bytes },
          ],
        }),
      ),
    );
    expect([...pdf.attachments.keys()]).toEqual(["record.fusebook.json"]);
    expect(Buffer.compare(Buffer.from(pdf.attachments.get("record.fusebook.json")!), Buffer.from(bytes))).toBe(0);
  });

  it("repeats the head of a table on every page", async () => {
    const rows = Array.from({ length: 120 }, (_, i) => [`row ${i}`, String(i)]);
    const pdf = await readPdf(
      await set(
        documentOf([
          { block: "table", columns: [{ title: "Circuit name", share: 1 }, { title: "n" }], rows, empty: "" },
        ]),
      ),
    );
    expect(pdf.pages.length).toBeGreaterThan(2);
    for (const page of pdf.pages) expect(page.text).toContain("Circuit name");
  });

  it("prints nothing smaller than 8.5 pt, and running text at 11 pt or more", async () => {
    const blocks: Block[] = [
      { block: "paragraph", text: "running text" },
      { block: "table", columns: [{ title: "head" }], rows: [["cell text"]], empty: "" },
      {
        block: "step",
        number: 1,
        text: "step text",
        cautions: ["caution text"],
        expect: [],
        lamps: [],
        rollBack: "roll back",
      },
      { block: "ruler", text: "ruler" },
    ];
    const [page] = (await readPdf(await set(documentOf(blocks)))).pages;
    const sizeOf = (text: string) => page!.runs.find((run) => run.text.includes(text))!.sizePt;
    for (const run of page!.runs) expect(run.sizePt, run.text).toBeGreaterThanOrEqual(8.4);
    expect(sizeOf("running text")).toBeGreaterThanOrEqual(11);
    expect(sizeOf("cell text")).toBeGreaterThanOrEqual(11);
    expect(sizeOf("step text")).toBeGreaterThanOrEqual(12);
    expect(sizeOf("caution text")).toBeGreaterThanOrEqual(12);
  });

  it("refuses faulty markup with the setter's own words", async () => {
    const setting = await engine.pdf("/faulty.typ", new Map([["/faulty.typ", "#no-such-thing"]]));
    expect(setting.kind === "refused" ? setting.faults.join() : "").toContain("no-such-thing");
  });
});
