import { getDocument, OPS } from "pdfjs-dist/legacy/build/pdf.mjs";

/** A stroked or filled path's outer box on the page, from its left top corner, in millimetres. */
export interface PathBox {
  readonly xMm: number;
  readonly yMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
}

/** One run of text and where it ends, in millimetres from the left edge. */
export interface TextRun {
  readonly text: string;
  readonly leftMm: number;
  readonly rightMm: number;
  readonly sizePt: number;
}

export interface ReadPage {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly text: string;
  readonly runs: readonly TextRun[];
  /** Roles of the tags on the page, in order, with the alternative text where there is one. */
  readonly tags: readonly { readonly role: string; readonly alt: string | undefined }[];
  boxes(): Promise<readonly PathBox[]>;
}

export interface ReadPdf {
  readonly title: string | undefined;
  readonly language: string | undefined;
  readonly isTagged: boolean;
  readonly bookmarks: readonly string[];
  readonly attachments: ReadonlyMap<string, Uint8Array>;
  readonly pages: readonly ReadPage[];
  readonly text: string;
}

const MM = 25.4 / 72;
type Matrix = readonly [number, number, number, number, number, number];
const times = (m: Matrix, k: Matrix): Matrix => [
  m[0] * k[0] + m[2] * k[1],
  m[1] * k[0] + m[3] * k[1],
  m[0] * k[2] + m[2] * k[3],
  m[1] * k[2] + m[3] * k[3],
  m[0] * k[4] + m[2] * k[5] + m[4],
  m[1] * k[4] + m[3] * k[5] + m[5],
];

// biome-ignore lint/suspicious/noExplicitAny: the reader library types its tree loosely
type Loose = any;

/** Opens a PDF with an independent reader that stops at the first fault in its structure. */
export async function readPdf(bytes: Uint8Array): Promise<ReadPdf> {
  const pdf: Loose = await getDocument({
    data: bytes.slice(),
    stopAtErrors: true,
    verbosity: 0,
    isEvalSupported: false,
  }).promise;
  const { info }: Loose = await pdf.getMetadata();
  const mark = await pdf.getMarkInfo();
  const outline: Loose[] = (await pdf.getOutline()) ?? [];
  const attached: Loose = (await pdf.getAttachments()) ?? {};
  const pages: ReadPage[] = [];
  for (let i = 1; i <= pdf.numPages; i++) pages.push(await readPage(await pdf.getPage(i)));
  return {
    title: info.Title,
    language: info.Language,
    isTagged: mark?.Marked === true,
    bookmarks: outline.map((item) => item.title),
    attachments: new Map(Object.values<Loose>(attached).map((file) => [file.filename, file.content])),
    pages,
    text: pages.map((page) => page.text).join("\n"),
  };
}

async function readPage(page: Loose): Promise<ReadPage> {
  const [, , widthPt, heightPt] = page.view as number[];
  const content: Loose = await page.getTextContent();
  const items: Loose[] = content.items.filter((item: Loose) => typeof item.str === "string");
  const tree: Loose = await page.getStructTree();
  const tags: { role: string; alt: string | undefined }[] = [];
  const collect = (node: Loose) => {
    if (node?.role !== undefined) tags.push({ role: node.role, alt: node.alt });
    for (const child of node?.children ?? []) collect(child);
  };
  collect(tree);
  return {
    widthMm: widthPt! * MM,
    heightMm: heightPt! * MM,
    text: items.map((item) => item.str + (item.hasEOL ? "\n" : "")).join(""),
    runs: items
      .filter((item) => item.str.trim() !== "")
      .map((item) => ({
        text: item.str,
        leftMm: item.transform[4] * MM,
        rightMm: (item.transform[4] + (Math.abs(item.transform[0]) > 1e-6 ? item.width : 0)) * MM,
        sizePt: Math.hypot(item.transform[2], item.transform[3]),
      })),
    tags,
    boxes: () => boxesOf(page, heightPt!),
  };
}

async function boxesOf(page: Loose, heightPt: number): Promise<PathBox[]> {
  const { fnArray, argsArray }: Loose = await page.getOperatorList();
  const boxes: PathBox[] = [];
  let matrix: Matrix = [1, 0, 0, 1, 0, 0];
  const stack: Matrix[] = [];
  fnArray.forEach((fn: number, i: number) => {
    const args = argsArray[i];
    if (fn === OPS.save) stack.push(matrix);
    else if (fn === OPS.restore) matrix = stack.pop() ?? matrix;
    else if (fn === OPS.transform) matrix = times(matrix, args as Matrix);
    else if (fn === OPS.paintFormXObjectBegin) {
      stack.push(matrix);
      if (args[0]) matrix = times(matrix, args[0] as Matrix);
    } else if (fn === OPS.paintFormXObjectEnd) matrix = stack.pop() ?? matrix;
    else if (fn === OPS.constructPath) {
      const [x0, y0, x1, y1] = Array.from(args[2] as ArrayLike<number>) as [number, number, number, number];
      const xs = [x0, x1].flatMap((x) => [y0, y1].map((y) => matrix[0] * x + matrix[2] * y + matrix[4]));
      const ys = [x0, x1].flatMap((x) => [y0, y1].map((y) => matrix[1] * x + matrix[3] * y + matrix[5]));
      const [left, right, low, high] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
      boxes.push({
        xMm: left * MM,
        yMm: (heightPt - high) * MM,
        widthMm: (right - left) * MM,
        heightMm: (high - low) * MM,
      });
    }
  });
  return boxes;
}
