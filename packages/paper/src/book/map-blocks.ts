import type { Block } from "../document/blocks.js";
import { PAPERS } from "../document/blocks.js";
import { doorMap } from "../drawings/door-map.js";
import { lineDiagram } from "../drawings/line-diagram.js";
import type { Measure } from "../drawings/measure.js";
import type { BookView } from "./book-view.js";

/** What a page leaves below its heading and one line of text. */
const ABOVE_AND_BELOW_MM = 66;

/** The fuse map for the door: every fuse, its number, what it feeds. */
export function mapBlocks(view: BookView, measure: Measure): Block[] {
  const room = PAPERS[view.head.paper].heightMm - ABOVE_AND_BELOW_MM;
  const sheets = doorMap(view.map, room, measure);
  const heading: Block = { block: "heading", level: 1, text: "Fuse map", newPage: true };
  if (view.map.length === 0 || sheets.length === 0)
    return [heading, { block: "paragraph", text: "The record holds no fuse yet." }];
  return [
    heading,
    {
      block: "paragraph",
      manner: "soft",
      text: "Copy this page for the inside of the door. “?” is a fuse nobody has read.",
    },
    ...sheets.map((drawing): Block => ({ block: "drawing", drawing })),
  ];
}

/** Supplies, feeders and modules on one line each. */
export function diagramBlocks(view: BookView, measure: Measure): Block[] {
  const room = PAPERS[view.head.paper].heightMm - ABOVE_AND_BELOW_MM;
  const { drawing, notDrawn } = lineDiagram(view.diagram.nodes, view.diagram.links, measure);
  const blocks: Block[] = [{ block: "heading", level: 1, text: "Supplies and feeders", newPage: true }];
  if (drawing === undefined)
    return [
      ...blocks,
      { block: "paragraph", text: "The record names no battery or other source, so there is no diagram to draw." },
    ];
  const tall = Number(/viewBox="0 0 [\d.]+ ([\d.]+)"/.exec(drawing.svg)?.[1]);
  const widthMm = Math.min(drawing.widthMm, (drawing.widthMm * room) / tall);
  blocks.push(
    {
      block: "paragraph",
      manner: "soft",
      text: "The positive side, from the sources at the left to the modules at the right. Returns and grounds are in the wire list. Symbols after IEC 60617, from memory.",
    },
    { block: "drawing", drawing: { ...drawing, widthMm } },
  );
  const nameOf = (id: string) => view.diagram.nodes.find((node) => node.id === id)?.name ?? id;
  if (notDrawn.length > 0)
    blocks.push(
      { block: "paragraph", text: "Also connected, and not on the diagram:" },
      {
        block: "list",
        items: notDrawn.map((link) =>
          [`${nameOf(link.from)} to ${nameOf(link.to)}`, link.fuse, link.text].filter((word) => word !== "").join(", "),
        ),
      },
    );
  return blocks;
}
