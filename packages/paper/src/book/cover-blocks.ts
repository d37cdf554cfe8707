import type { Block } from "../document/blocks.js";
import { loomPicture } from "../drawings/loom-picture.js";
import type { Measure } from "../drawings/measure.js";
import type { BookView } from "./book-view.js";

/** Cover, how to read the book, contents. */
export function coverBlocks(view: BookView, measure: Measure): Block[] {
  const drawing = loomPicture(view.loom, measure);
  return [
    {
      block: "cover",
      eyebrow: "As-built book of the house wiring",
      title: view.head.coach,
      ...(drawing === undefined ? {} : { drawing }),
      subtitle: "For the owner, and for the next person who opens a cover.",
      pairs: [...view.facts, ["As of", view.head.date], ["Book", view.head.id]],
    },
    { block: "heading", level: 1, text: "How to read this book", newPage: true },
    {
      block: "paragraph",
      manner: "lead",
      text: "Looking for one fuse? Turn to the fuse map. Opening a module? Turn to its sheet. Something is wrong? Read “Open and to be mended” first.",
    },
    {
      block: "list",
      items: [
        "Every figure says how it is known: measured with an instrument, marked on a part or print, typical of its class, or assumed. An assumed figure is a question, not an answer.",
        "A wire is drawn as wide as the amps it carries. Its pattern is its margin: solid is ample, hatched is tight, doubled is over its limit, dotted waits for a reading. The page reads the same in black only.",
        "Fuse colours follow ISO 8820-3, most of them from memory. The number printed on the fuse is the truth; the colour is only a check.",
        "The switch cards show each bank as it looks on the part. “?” means that nobody has read that switch.",
        "The record behind this book is enclosed in the PDF file. It can be taken out and opened again.",
      ],
    },
    {
      block: "caution",
      text: "Open every source before a cover comes off, and prove the coach dead with a meter. Solar makes volts whenever there is light.",
    },
    {
      block: "paragraph",
      text: "Mains (120 or 230 V), gas and structural work are for licensed people. Smoke, carbon monoxide and gas detectors are never put on a switched channel. Local rules win over every figure in this book.",
    },
    { block: "heading", level: 2, text: "Contents" },
    { block: "contents" },
  ];
}
