import type { Drawing } from "../document/blocks.js";
import { type DiagramLayout, type DiagramLink, type DiagramNode, layDiagram } from "./diagram-layout.js";
import { batterySymbol, fuseSymbol, switchSymbol } from "./fuse-box.js";
import { COPPER, INK, SHEET, SOFT } from "./look.js";
import type { Measure } from "./measure.js";
import { box, line, sheet, textAt, textIn } from "./svg.js";

const WIDTH_MM = 176;
const LANE_MM = 15;
const END_W = 40;
const ROOT_W = 34;
const TOP = 10;

/** Supplies at the left, feeders and bus bars, modules at the right. Every conductor has a lane of its own, so that none crosses another. */
export function lineDiagram(
  nodes: readonly DiagramNode[],
  links: readonly DiagramLink[],
  measure: Measure,
): { drawing: Drawing | undefined; notDrawn: readonly DiagramLink[] } {
  const layout = layDiagram(nodes, links);
  if (layout.lanes === 0) return { drawing: undefined, notDrawn: layout.notDrawn };
  const gap = (WIDTH_MM - ROOT_W - END_W) / Math.max(1, layout.layers - 1);
  const xOf = (node: DiagramNode) => {
    const layer = layout.layerOf.get(node.id) ?? 0;
    return layer === 0 ? 0 : layer === layout.layers - 1 ? WIDTH_MM - END_W : ROOT_W + layer * gap;
  };
  const yOf = (lane: number) => TOP + lane * LANE_MM;
  let out = "";
  for (const link of layout.links) out += linkOf(link, layout, xOf, yOf, gap, measure);
  for (const node of nodes) if (layout.layerOf.has(node.id)) out += nodeOf(node, layout, xOf(node), yOf, measure);
  const bottom = yOf(layout.lanes - 1) + 12;
  const drawing = {
    svg: sheet(WIDTH_MM, bottom + 8, "Single-line diagram", out + legend(bottom + 4)),
    alt: altOf(nodes, layout),
    widthMm: WIDTH_MM,
  };
  return { drawing, notDrawn: layout.notDrawn };
}

type XOf = (node: DiagramNode) => number;
type YOf = (lane: number) => number;

const isSupply = (node: DiagramNode): boolean => node.kind === "battery" || node.kind === "source";

function linkOf(
  placed: DiagramLayout["links"][number],
  layout: DiagramLayout,
  xOf: XOf,
  yOf: YOf,
  gap: number,
  measure: Measure,
): string {
  const { link, lane, parent, child } = placed;
  const y = yOf(lane);
  // A second source stands just left of the bar it feeds.
  const isSide = isSupply(child) && layout.layerOf.get(child.id) !== 0;
  const x1 = isSide ? xOf(parent) - 8 : xOf(parent) + (layout.layerOf.get(parent.id) === 0 ? ROOT_W : 1);
  const x2 = isSide ? xOf(parent) : xOf(child);
  let out = line(x1, y, x2, y, 0.9, COPPER);
  if (isSide) return out;
  let x = x1 + 2.5;
  if (link.disconnect !== "") {
    out += switchSymbol(x, y);
    x += 8.5;
  }
  if (link.fuse !== "") {
    out += fuseSymbol(x, y) + textAt(x + 4, y - 3, link.fuse, { sizeMm: 3.4, isStrong: true, anchor: "middle" });
  }
  const said = textIn(
    x1 + 2,
    y + 4.2,
    Math.max(12, Math.min(gap, x2 - x1) - 4),
    link.text,
    { sizeMm: 3.2, colour: SOFT },
    measure,
  );
  return out + said.svg;
}

function nodeOf(node: DiagramNode, layout: DiagramLayout, x: number, yOf: YOf, measure: Measure): string {
  const [first, last] = layout.spanOf.get(node.id) ?? [0, 0];
  const mid = yOf(layout.laneOf.get(node.id) ?? first);
  if (isSupply(node)) {
    const isRoot = layout.layerOf.get(node.id) === 0;
    const left = isRoot ? 0.5 : Math.max(0.5, x - 8 - 30);
    const w = isRoot ? ROOT_W - 0.5 : 30;
    const symbol = node.kind === "battery" ? batterySymbol(left + 2.5, mid) : "";
    const textX = left + (node.kind === "battery" ? 10 : 2);
    return (
      box(left, mid - 6.4, w, 12.8, { fill: SHEET, widthMm: 0.5 }) +
      symbol +
      twoLines(textX, mid, left + w - textX - 1, node, measure)
    );
  }
  if (node.kind === "end")
    return (
      box(x, mid - 6.2, END_W - 0.5, 12.4, { fill: SHEET, widthMm: 0.5 }) +
      twoLines(x + 2, mid, END_W - 4, node, measure)
    );
  const top = yOf(first) - 4.5;
  const name = textIn(x - 4, top - 1.6, 36, node.name, { sizeMm: 3.4, isStrong: true }, measure).svg;
  return box(x, top, 1.8, yOf(last) - yOf(first) + 9, { fill: INK, stroke: "none" }) + name;
}

const twoLines = (x: number, mid: number, widthMm: number, node: DiagramNode, measure: Measure): string =>
  textIn(x, mid - 0.8, widthMm, node.name, { sizeMm: 3.5, isStrong: true }, measure).svg +
  textIn(x, mid + 4, widthMm, node.detail, { sizeMm: 3.1, colour: SOFT }, measure).svg;

const legend = (y: number): string =>
  batterySymbol(1, y - 1) +
  textAt(9, y, "battery", { sizeMm: 3.3, colour: SOFT }) +
  line(28, y - 1, 38, y - 1, 0.9, COPPER) +
  fuseSymbol(29, y - 1) +
  textAt(40, y, "fuse", { sizeMm: 3.3, colour: SOFT }) +
  line(54, y - 1, 64, y - 1, 0.9, COPPER) +
  switchSymbol(55, y - 1) +
  textAt(66, y, "switch", { sizeMm: 3.3, colour: SOFT }) +
  box(84, y - 4, 1.8, 6, { fill: INK, stroke: "none" }) +
  textAt(88, y, "bus bar, stud or splice. Symbols after IEC 60617, from memory.", { sizeMm: 3.3, colour: SOFT });

const altOf = (nodes: readonly DiagramNode[], layout: DiagramLayout): string =>
  `Single-line diagram of the positive side with ${nodes.length} points. ${layout.links
    .map(
      ({ link, parent, child }) =>
        `${parent.name} to ${child.name}${link.fuse === "" ? "" : `, fuse ${link.fuse}`}${link.text === "" ? "" : `, ${link.text}`}`,
    )
    .join("; ")}.`;
