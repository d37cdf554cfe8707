import type { PaperDocument } from "../document/blocks.js";
import { setDocument } from "../document/set-document.js";
import { measureWith } from "../drawings/measure.js";
import type { PaperEngine, Setting } from "../engine/paper-engine.js";
import type { LabelReport } from "../labels/strip.js";
import { jobBlocks, proposalBlocks } from "./job-blocks.js";
import { labelBlocks } from "./label-blocks.js";
import type { PacketView } from "./packet-view.js";
import { closingBlocks, testBlocks } from "./test-blocks.js";
import { pinMapBlocks, stepBlocks } from "./work-blocks.js";

export type PacketSetting = Setting & { readonly unfitLabels: readonly LabelReport[] };

/** The packet as a document: job sheet, proposal, isolation, steps, pin maps, labels, test sheet, sources. */
export function packetDocument(
  view: PacketView,
  measure: ReturnType<typeof measureWith>,
): { document: PaperDocument; unfitLabels: readonly LabelReport[] } {
  const labels = labelBlocks(view, measure);
  const document: PaperDocument = {
    title: `${view.head.coach}: work packet, ${view.job.title}`,
    description: `Work packet for ${view.head.coach}: ${view.job.title}`,
    language: "en",
    date: view.head.date,
    id: view.head.id,
    paper: view.head.paper,
    running: `${view.head.coach} · ${view.job.title}`,
    mark: view.head.isInvented ? "Invented coach, for demonstration" : "",
    blocks: [
      ...jobBlocks(view),
      ...proposalBlocks(view),
      ...stepBlocks(view, measure),
      ...pinMapBlocks(view),
      ...labels.blocks,
      ...testBlocks(view),
      ...closingBlocks(view),
    ],
    enclosures: [],
  };
  return { document, unfitLabels: labels.reports };
}

/** Sets the packet. `unfitLabels` names the labels whose text does not fit at true size; the sheet lists them too. */
export async function packetPdf(engine: PaperEngine, view: PacketView): Promise<PacketSetting> {
  const { document, unfitLabels } = packetDocument(view, measureWith(engine.typefaces));
  return { ...(await setDocument(engine, document)), unfitLabels };
}
