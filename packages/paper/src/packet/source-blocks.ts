import type { Block } from "../document/blocks.js";
import type { SourceLine } from "./packet-view.js";

/** Where the limits come from, and which of them nobody saw in print. */
export const sourceBlocks = (sources: readonly SourceLine[], level: 1 | 2): Block[] => [
  { block: "heading", level, text: "Where the limits come from", newPage: level === 1 },
  {
    block: "paragraph",
    text: "“Seen” means the text was opened; “worked out” comes from a seen formula; “from memory” was neither, and never decides what is safe to energise. Local rules win over every figure here.",
  },
  {
    block: "table",
    columns: [
      { title: "Source", share: 5 },
      { title: "How known", share: 2 },
      { title: "Used for", share: 4 },
    ],
    rows: sources.map((s) => [s.name, s.how, s.for]),
    empty: "No published figure was used.",
  },
];
