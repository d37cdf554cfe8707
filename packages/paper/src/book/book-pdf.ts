import type { Block, PaperDocument } from "../document/blocks.js";
import { setDocument } from "../document/set-document.js";
import { type Measure, measureWith } from "../drawings/measure.js";
import type { PaperEngine, Setting } from "../engine/paper-engine.js";
import { sourceBlocks } from "../packet/source-blocks.js";
import type { BookView } from "./book-view.js";
import { coverBlocks } from "./cover-blocks.js";
import { diagramBlocks, mapBlocks } from "./map-blocks.js";
import { moduleBlocks, settingBlocks } from "./module-blocks.js";
import { changeBlocks, openBlocks, proofBlocks, wireBlocks } from "./state-blocks.js";

/** The as-built book as a document, with the record enclosed. */
export function bookDocument(view: BookView, measure: Measure): PaperDocument {
  const blocks: Block[] = [
    ...coverBlocks(view, measure),
    ...mapBlocks(view, measure),
    ...diagramBlocks(view, measure),
    ...settingBlocks(view),
    ...moduleBlocks(view, measure),
    ...wireBlocks(view),
    ...changeBlocks(view),
    ...openBlocks(view),
    ...proofBlocks(view),
    ...sourceBlocks(view.sources, 1),
  ];
  return {
    title: `${view.head.coach}: as-built book`,
    description: `As-built book of the 12/24 V house wiring of ${view.head.coach}, with its record enclosed`,
    language: "en",
    date: view.head.date,
    id: view.head.id,
    paper: view.head.paper,
    running: `${view.head.coach} · as-built book`,
    mark: view.head.isInvented ? "Invented coach, for demonstration" : "",
    blocks,
    enclosures: [
      {
        name: view.record.name,
        mediaType: "application/json",
        description: `The record of ${view.head.coach} from which this book was set`,
        bytes: view.record.bytes,
      },
    ],
  };
}

/** Sets the as-built book. The record travels inside the PDF and can be taken out bit for bit. */
export const bookPdf = (engine: PaperEngine, view: BookView): Promise<Setting> =>
  setDocument(engine, bookDocument(view, measureWith(engine.typefaces)));
