import { FONT_FAMILIES } from "../engine/font-files.js";
import type { PaperEngine, Setting } from "../engine/paper-engine.js";
import type { Block, Cell, Drawing, PaperDocument } from "./blocks.js";
import { withBreakPoints } from "./break-points.js";
import { drawableText } from "./drawable-text.js";
import { facedSvg } from "./faced-svg.js";

const WORDS = { caution: "Caution.", lamps: "Lamps:", rollBack: "To go back:" };

/** Sets a document to a PDF. What the record wrote travels as JSON data; the markup never changes. */
export function setDocument(engine: PaperEngine, document: PaperDocument): Promise<Setting> {
  const files = new Map<string, Uint8Array | string>();
  const plain = (value: string) => drawableText(value, engine.typefaces);
  const text = (value: string) => withBreakPoints(plain(value));
  const picture = (drawing: Drawing) => {
    const image = `/drawings/${files.size}.svg`;
    files.set(image, facedSvg(plain(drawing.svg), engine.typefaces));
    return { image, alt: plain(drawing.alt), widthMm: drawing.widthMm };
  };
  const cell = (value: Cell): unknown =>
    typeof value === "string" ? text(value) : "drawing" in value ? picture(value.drawing) : texts(value, text);
  const blocks = document.blocks.map((block) =>
    block.block === "heading"
      ? { ...texts(block, plain), newPage: block.newPage ?? false }
      : plainBlock(block, text, cell, picture),
  );
  const attachments = document.enclosures.map((enclosure) => {
    const path = `/${enclosure.name}`;
    files.set(path, enclosure.bytes);
    return { path, mediaType: enclosure.mediaType, description: enclosure.description };
  });
  const [year, month, day] = document.date.split("-").map(Number);
  files.set(
    "/document.json",
    JSON.stringify({
      title: plain(document.title),
      description: plain(document.description),
      language: document.language,
      date: [year, month, day],
      id: document.id,
      paper: document.paper === "a4" ? "a4" : "us-letter",
      running: text(document.running),
      footing: text(`${document.id} · ${document.date}`),
      mark: text(document.mark),
      fonts: FONT_FAMILIES,
      words: WORDS,
      blocks,
      attachments,
    }),
  );
  return engine.pdf("/paper.typ", files);
}

type Text = (value: string) => string;

/** Every string in a plain value, made drawable. */
function texts<T>(value: T, text: Text): T {
  if (typeof value === "string") return text(value) as T;
  if (Array.isArray(value)) return value.map((item) => texts(item, text)) as T;
  if (value !== null && typeof value === "object")
    return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, texts(item, text)])) as T;
  return value;
}

function plainBlock(
  block: Block,
  text: Text,
  cell: (value: Cell) => unknown,
  picture: (drawing: Drawing) => { image: string; alt: string; widthMm: number },
): unknown {
  switch (block.block) {
    case "table":
      return {
        block: "table",
        columns: block.columns.map((c) => ({
          title: text(c.title),
          align: c.align ?? "left",
          width: c.share ?? "auto",
        })),
        rows: block.rows.map((row) => row.map(cell)),
        empty: text(block.empty),
        ...(block.sizePt === undefined ? {} : { sizePt: block.sizePt }),
      };
    case "step":
      return {
        ...texts({ ...block, drawing: undefined }, text),
        detail: text(block.detail ?? ""),
        rollBack: text(block.rollBack ?? ""),
        drawing: block.drawing === undefined ? null : picture(block.drawing),
      };
    case "facts":
    case "cover": {
      const drawing = block.block === "cover" ? block.drawing : undefined;
      return {
        ...texts({ ...block, pairs: [], drawing: undefined }, text),
        image: null,
        ...(drawing === undefined ? {} : picture(drawing)),
        pairs: block.pairs.map(([label, value]) => [text(label), cell(value)]),
      };
    }
    case "drawing":
      return { block: "drawing", ...picture(block.drawing), caption: text(block.caption ?? "") };
    case "drawings":
      return { block: "drawings", columns: block.columns, items: block.drawings.map(picture) };
    case "paragraph":
      return { ...texts(block, text), manner: block.manner ?? "body" };
    default:
      return texts(block, text);
  }
}
