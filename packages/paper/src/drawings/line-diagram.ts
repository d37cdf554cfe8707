import type { Drawing } from "../document/blocks.js";
import {
  type DiagramLayout,
  type DiagramLink,
  type DiagramNode,
  layDiagram,
  type PlacedLink,
} from "./diagram-layout.js";
import { batterySymbol, fuseSymbol, switchSymbol } from "./fuse-box.js";
import { COPPER, INK, SHEET, SOFT } from "./look.js";
import type { Measure } from "./measure.js";
import { box, line, sheet, textAt, textIn, wrapText } from "./svg.js";

const WIDTH_MM = 176;
const LANE_MM = 15;
const END_W = 40;
const ROOT_W = 40;
/** Room above the first lane for the names of the bars. */
const TOP = 26;
const NAME = 3.4;

/** Where things stand on the page. */
interface Page {
  readonly layout: DiagramLayout;
  readonly gapMm: number;
  xOf(node: DiagramNode): number;
  yOf(lane: number): number;
}

/** Supplies at the left, feeders and bus bars, modules at the right. Every conductor has a lane of its own, so that none crosses another. */
export function lineDiagram(
  nodes: readonly DiagramNode[],
  links: readonly DiagramLink[],
  measure: Measure,
): { drawing: Drawing | undefined; notDrawn: readonly DiagramLink[] } {
  const layout = layDiagram(nodes, links);
  if (layout.lanes === 0) return { drawing: undefined, notDrawn: layout.notDrawn };
  const gapMm = (WIDTH_MM - ROOT_W - END_W) / Math.max(1, layout.layers - 1);
  const page: Page = {
    layout,
    gapMm,
    xOf(node) {
      const layer = layout.layerOf.get(node.id) ?? 0;
      return layer === 0 ? 0 : ROOT_W + layer * gapMm;
    },
    yOf: (lane) => TOP + lane * LANE_MM,
  };
  const drawn = nodes.filter((node) => layout.layerOf.has(node.id));
  const out = [
    ...layout.links.map((placed) => linkOf(placed, page, measure)),
    ...drawn.map((node) => nodeOf(node, page, measure)),
  ].join("");
  const bottom = page.yOf(layout.lanes - 1) + 12;
  const drawing: Drawing = {
    svg: sheet(WIDTH_MM, bottom + 8, "Single-line diagram", out + legend(bottom + 4)),
    alt: altOf(drawn, layout),
    widthMm: WIDTH_MM,
  };
  return { drawing, notDrawn: layout.notDrawn };
}

const isSupply = (node: DiagramNode): boolean => node.kind === "battery" || node.kind === "source";

function linkOf({ link, lane, parent, child }: PlacedLink, page: Page, measure: Measure): string {
  const y = page.yOf(lane);
  const [x1, x2] = isSupply(child)
    ? [ROOT_W, page.xOf(parent)]
    : [isSupply(parent) ? ROOT_W : page.xOf(parent) + 1, page.xOf(child)];
  let out = line(x1, y, x2, y, 0.9, COPPER);
  let x = x1 + 3;
  if (link.disconnect !== "") {
    out += switchSymbol(x, y);
    x += 8.5;
  }
  if (link.fuse !== "")
    out += fuseSymbol(x, y) + textAt(x + 4, y - 2.6, link.fuse, { sizeMm: NAME, isStrong: true, anchor: "middle" });
  return out + textIn(x1 + 2.4, y + 4.6, page.gapMm - 4.5, link.text, { sizeMm: 3.2, colour: SOFT }, measure).svg;
}

function nodeOf(node: DiagramNode, page: Page, measure: Measure): string {
  const [first, last] = page.layout.spanOf.get(node.id) ?? [0, 0];
  const x = page.xOf(node);
  const mid = page.yOf(first);
  if (node.kind === "bar") return barOf(node, page, first, last, measure);
  const w = (isSupply(node) ? ROOT_W : END_W) - 0.5;
  const left = isSupply(node) ? 0.5 : x;
  const textX = left + (node.kind === "battery" ? 10.5 : 2);
  return (
    box(left, mid - 6.6, w - 0.5, 13.2, { fill: SHEET, widthMm: 0.5 }) +
    (node.kind === "battery" ? batterySymbol(left + 2.5, mid) : "") +
    boxWords(textX, mid, left + w - textX - 2, node, measure)
  );
}

/** The name of a bar stands above it, its last line nearest. */
function barOf(node: DiagramNode, page: Page, first: number, last: number, measure: Measure): string {
  const x = page.xOf(node);
  const top = page.yOf(first) - 5.5;
  const room = page.gapMm - 3;
  const sizeMm =
    [NAME, 3, 2.6].find((size) => wrapText(node.name, room / size / 0.8, 4, true, measure) !== undefined) ?? 2.4;
  const lines = wrapText(node.name, room / sizeMm / 0.8, 4, true, measure) ?? [node.name];
  const name = lines
    .map((text, i) => {
      const ratio = Math.min(1, room / sizeMm / measure(text, true));
      return textAt(x - 1, top - 1.5 - (lines.length - 1 - i) * sizeMm * 1.14, text, { sizeMm, isStrong: true }, ratio);
    })
    .join("");
  return box(x, top, 1.8, page.yOf(last) - page.yOf(first) + 11, { fill: INK, stroke: "none" }) + name;
}

/** Name and detail inside a box, at the largest size at which both stand whole. */
function boxWords(x: number, mid: number, widthMm: number, node: DiagramNode, measure: Measure): string {
  for (const sizeMm of [3.5, 3.1, 2.7, 2.3]) {
    const name = wrapText(node.name, widthMm / sizeMm / 0.8, 3, true, measure);
    const detail = node.detail === "" ? [] : wrapText(node.detail, widthMm / sizeMm / 0.8, 2, false, measure);
    if (name === undefined || detail === undefined || (name.length + detail.length) * sizeMm * 1.14 > 12.6) continue;
    const lines = [
      ...name.map((text) => ({ text, isStrong: true })),
      ...detail.map((text) => ({ text, isStrong: false })),
    ];
    const top = mid - (lines.length * sizeMm * 1.14) / 2 + sizeMm * 0.86;
    return lines
      .map(({ text, isStrong }, i) => {
        const ratio = Math.min(1, widthMm / sizeMm / measure(text, isStrong));
        return textAt(x, top + i * sizeMm * 1.14, text, { sizeMm, isStrong, colour: isStrong ? INK : SOFT }, ratio);
      })
      .join("");
  }
  return textIn(x, mid - 3.4, widthMm, node.name, { sizeMm: 2.3, isStrong: true }, measure).svg;
}

const legend = (y: number): string =>
  batterySymbol(1, y - 1) +
  textAt(9, y, "battery", { sizeMm: 3.3, colour: SOFT }) +
  line(28, y - 1, 38, y - 1, 0.9, COPPER) +
  fuseSymbol(29, y - 1) +
  textAt(40, y, "fuse or breaker", { sizeMm: 3.3, colour: SOFT }) +
  line(70, y - 1, 80, y - 1, 0.9, COPPER) +
  switchSymbol(71, y - 1) +
  textAt(82, y, "switch", { sizeMm: 3.3, colour: SOFT }) +
  box(99, y - 4, 1.8, 6, { fill: INK, stroke: "none" }) +
  textAt(103, y, "bus bar, stud or splice", { sizeMm: 3.3, colour: SOFT });

const altOf = (drawn: readonly DiagramNode[], layout: DiagramLayout): string =>
  `Single-line diagram of the positive side with ${drawn.length} points. ${layout.links
    .map(
      ({ link, parent, child }) =>
        `${parent.name} to ${child.name}${link.fuse === "" ? "" : `, fuse ${link.fuse}`}${link.text === "" ? "" : `, ${link.text}`}`,
    )
    .join("; ")}.`;
