import type { Block, Cell } from "../document/blocks.js";
import type { Measure } from "../drawings/measure.js";
import { moduleSheet } from "../drawings/module-sheet.js";
import { switchCard } from "../drawings/switch-card.js";
import type { BookView } from "./book-view.js";

/** A page for each module. */
export function moduleBlocks(view: BookView, measure: Measure): Block[] {
  return view.modules.flatMap((page): Block[] => {
    const blocks: Block[] = [
      { block: "heading", level: 1, text: page.sheet.title, newPage: true },
      { block: "facts", labelMm: 30, pairs: page.facts },
    ];
    if (page.sheet.rows.length === 0)
      blocks.push({ block: "paragraph", text: "No circuit of this module is in the record yet." });
    else
      blocks.push({
        block: "drawing",
        drawing: moduleSheet(page.sheet, measure),
        caption: `Widths after the amps with ${view.stateName}.`,
      });
    if (page.card !== undefined) blocks.push({ block: "drawing", drawing: switchCard(page.card, measure) });
    if (page.notes.length > 0) blocks.push({ block: "list", items: page.notes });
    return blocks;
  });
}

/** Every address and bank on one table. */
export const settingBlocks = (view: BookView): Block[] => [
  { block: "heading", level: 1, text: "Settings" },
  {
    block: "paragraph",
    manner: "soft",
    text: "Positions in switch order, first switch first: 1 is ON, 0 is OFF, ? was not read.",
  },
  {
    block: "table",
    columns: [
      { title: "Module", share: 3 },
      { title: "Kind", share: 2 },
      { title: "Address", align: "right" },
      { title: "Bank", share: 2 },
      { title: "May dim", share: 3 },
    ],
    rows: view.settings.map((s): Cell[] => [{ text: s.module, strong: true }, s.kind, s.address, s.positions, s.dims]),
    empty: "The record holds no module.",
  },
];
