import { writeFileSync } from "node:fs";
import { checkRecord } from "@fusebook/core/findings";
import { indexRecord } from "@fusebook/core/record";
import { demoRecord, demoRecordText } from "@fusebook/fixtures";
import { expect, it } from "vitest";
import { loadPaperEngine } from "../index.js";
import { bookViewOf } from "../view/book-view-of.js";
import { bookPdf } from "./book-pdf.js";

it("sets the demo", async () => {
  const engine = await loadPaperEngine();
  const index = indexRecord(demoRecord());
  const view = bookViewOf({
    index,
    findings: checkRecord(index),
    recordBytes: new TextEncoder().encode(demoRecordText()),
    date: "2026-05-02",
    id: "marsh-wren-1",
  });
  const t = performance.now();
  const r = await bookPdf(engine, view);
  console.log("ms", performance.now() - t);
  if (r.kind === "refused") console.log(r.faults);
  expect(r.kind).toBe("set");
  if (r.kind === "set") writeFileSync("/tmp/hout/book.pdf", r.pdf);
});
