import type { Block, Cell } from "../document/blocks.js";
import { openTables } from "../packet/open-blocks.js";
import type { BookView } from "./book-view.js";

export const wireBlocks = (view: BookView): Block[] => [
  { block: "heading", level: 1, text: "Wire list", newPage: true },
  {
    block: "paragraph",
    manner: "soft",
    text: "Figures are as marked on the part or print unless it says otherwise under them. Lengths are one way.",
  },
  {
    block: "table",
    sizePt: 11,
    columns: [
      { title: "Circuit or cable", share: 4 },
      { title: "Way", share: 1.3 },
      { title: "Size", share: 2 },
      { title: "Length", share: 2 },
      { title: "From and to", share: 4 },
    ],
    rows: view.wires.map((w): Cell[] => [w.circuit, w.way, w.size, w.length, w.ends]),
    empty: "No wire of this coach is in the record yet.",
  },
];

export const changeBlocks = (view: BookView): Block[] => [
  { block: "heading", level: 1, text: "What was changed, and why" },
  {
    block: "table",
    columns: [
      { title: "Change", share: 5 },
      { title: "Why", share: 4 },
    ],
    rows: view.changes.map((c): Cell[] => [c.what, c.why]),
    empty: "Nothing has been changed since the survey.",
  },
];

/** Worst first: what must be mended, what is open, and the reading that settles it. */
export const openBlocks = (view: BookView): Block[] => [
  { block: "heading", level: 1, text: "Open and to be mended", newPage: true },
  {
    block: "paragraph",
    text:
      view.open.length === 0
        ? "Nothing is open."
        : "What this book does not know is as important as what it knows. The right-hand column says what settles each line.",
  },
  ...openTables(view.open, true),
];

export function proofBlocks(view: BookView): Block[] {
  const heading: Block = { block: "heading", level: 1, text: "Proof record" };
  if (view.proof === undefined)
    return [
      heading,
      {
        block: "paragraph",
        text: "No proof has been taken. Until it is, every expected value in this book is a prediction.",
      },
    ];
  return [
    heading,
    ...view.proof.summary.map((text): Block => ({ block: "paragraph", text })),
    {
      block: "table",
      columns: [
        { title: "Test", share: 6 },
        { title: "Expected", share: 2.4, align: "right" },
        { title: "Read", align: "right", share: 1.6 },
        { title: "Verdict", share: 1.8 },
      ],
      rows: view.proof.lines.map((p): Cell[] => [
        p.test,
        p.expected,
        p.read,
        { text: p.verdict, strong: p.verdict !== "holds" },
      ]),
      empty: "No test was made.",
    },
  ];
}
