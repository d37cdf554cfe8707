import { type Block, bodyWidthMm } from "../document/blocks.js";
import type { Measure } from "../drawings/measure.js";
import { type LabelReport, type LabelStrip, layStrip } from "../labels/strip.js";
import type { PacketView } from "./packet-view.js";

/** Fuse label strips at true size, with a ruler to check the print and a list of what does not fit. */
export function labelBlocks(view: PacketView, measure: Measure): { blocks: Block[]; reports: readonly LabelReport[] } {
  const filled = view.strips.filter((strip) => strip.labels.length > 0);
  if (filled.length === 0 && view.labelWants.length === 0) return { blocks: [], reports: [] };
  const laid = filled.map((strip: LabelStrip) => layStrip(strip, bodyWidthMm(view.head.paper), measure));
  const reports = laid.flatMap((one) => one.reports);
  const blocks: Block[] = [
    { block: "heading", level: 1, text: "Fuse labels at true size", newPage: true },
    {
      block: "ruler",
      text: "Print at 100 %, never “fit to page”. Lay a rule on this one: if 100 mm and 4 in do not agree with it, the labels are wrong too. Do not cut them.",
    },
    ...laid.flatMap((one) => one.blocks),
  ];
  if (reports.length > 0)
    blocks.push(
      { block: "heading", level: 2, text: "These texts do not fit" },
      {
        block: "paragraph",
        text: "Their labels show the number alone. Shorten the name in the record, or write it on the cover.",
      },
      {
        block: "table",
        columns: [{ title: "Strip", share: 2 }, { title: "Label" }, { title: "Text", share: 4 }],
        rows: reports.map((r) => [r.strip, { text: r.head, strong: true }, r.text]),
        empty: "",
      },
    );
  for (const want of view.labelWants)
    blocks.push({
      block: "paragraph",
      text: `${want.module}: no labels at true size, because ${want.why}. Measure one on the part and put it in the record.`,
    });
  return { blocks, reports };
}
