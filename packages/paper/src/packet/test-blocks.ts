import type { Block } from "../document/blocks.js";
import { openTables } from "./open-blocks.js";
import type { PacketView } from "./packet-view.js";
import { sourceBlocks } from "./source-blocks.js";

/** Circuit by circuit: what to test, what is expected within what span, an empty field, and a place for yes or no. */
export function testBlocks(view: PacketView): Block[] {
  const blocks: Block[] = [
    { block: "heading", level: 1, text: "Test sheet", newPage: true },
    {
      block: "paragraph",
      text: "Write what the meter shows, also when it is wrong. A reading outside its span is a fault to find, not a number to round.",
    },
  ];
  if (view.testsNote !== "") blocks.push({ block: "paragraph", text: view.testsNote });
  if (view.testMethods.length > 0)
    blocks.push({
      block: "facts",
      labelMm: 34,
      pairs: view.testMethods.map(([what, how]) => [what, how] as const),
    });
  blocks.push(
    view.tests.length === 0
      ? { block: "paragraph", text: "The record holds nothing that could be tested." }
      : { block: "checks", groups: view.tests },
    { block: "fields", fields: ["Meter, and when it was last checked", "Battery at rest, V", "Tested by, date"] },
  );
  return blocks;
}

/** What stays open, and where the figures come from. */
export function closingBlocks(view: PacketView): Block[] {
  if (view.open.length === 0) return sourceBlocks(view.sources, 1);
  return [
    { block: "heading", level: 1, text: "Still open", newPage: true },
    ...openTables(view.open, false),
    ...sourceBlocks(view.sources, 2),
  ];
}
