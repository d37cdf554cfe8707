import type { Block, Cell } from "../document/blocks.js";
import type { PacketView } from "./packet-view.js";
import { sourceBlocks } from "./source-blocks.js";

/** The first test of a circuit says where it is and what may hurt there. */
const testCell = (test: PacketView["tests"][number]): Cell => ({
  text: test.where === undefined ? test.what : `${test.where}: ${test.what}`,
  ...(test.where === undefined ? {} : { strong: true }),
  ...(test.caution === undefined ? {} : { under: `Caution. ${test.caution}` }),
});

/** One line a test: what to do, what is expected within what span, an empty field, and a place for yes or no. */
export function testBlocks(view: PacketView): Block[] {
  return [
    { block: "heading", level: 1, text: "Test sheet", newPage: true },
    {
      block: "paragraph",
      text: "Write what the meter shows, also when it is wrong. A reading outside its span is a fault to find, not a number to round.",
    },
    ...(view.testMethods === undefined ? [] : [{ block: "list" as const, items: view.testMethods }]),
    {
      block: "table",
      columns: [
        { title: "" },
        { title: "Test", share: 3 },
        { title: "Expected", align: "right" },
        { title: "Within", align: "right" },
        { title: "Read", share: 1, align: "right" },
        { title: "Good", align: "center" },
      ],
      rows: view.tests.map((t): Cell[] => [
        { text: t.number, strong: true },
        testCell(t),
        { text: t.expected, strong: true },
        t.span,
        { field: t.unit },
        { tick: true },
      ]),
      empty: "The record holds nothing that could be tested.",
    },
    { block: "fields", fields: ["Meter, and when it was last checked", "Battery at rest, V", "Tested by, date"] },
  ];
}

/** What stays open, and where the figures come from. */
export function closingBlocks(view: PacketView): Block[] {
  if (view.open.length === 0) return sourceBlocks(view.sources, 1);
  return [
    { block: "heading", level: 1, text: "Still open", newPage: true },
    { block: "list", items: view.open },
    ...sourceBlocks(view.sources, 2),
  ];
}
