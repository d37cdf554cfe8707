import type { Block, Cell } from "../document/blocks.js";
import type { OpenLine } from "./packet-view.js";

/** What is wrong or open, by weight, worst first: what, and what to do next. The source of the limit stands under each where asked. */
export function openTables(lines: readonly OpenLine[], withSources: boolean): Block[] {
  const weights = [...new Set(lines.map((line) => line.weight))];
  return weights.flatMap((weight): Block[] => {
    const mine = lines.filter((line) => line.weight === weight);
    return [
      { block: "heading", level: 2, text: `${weight} (${mine.length})` },
      {
        block: "table",
        columns: [
          { title: "What", share: 5 },
          { title: "What to do next", share: 3 },
        ],
        rows: mine.map((line): Cell[] => [
          withSources ? { text: line.what, under: line.source } : line.what,
          line.next,
        ]),
        empty: "",
      },
    ];
  });
}
