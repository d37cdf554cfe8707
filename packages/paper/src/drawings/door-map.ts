import type { Drawing } from "../document/blocks.js";
import { fuseBox } from "./fuse-box.js";
import type { FusePatch } from "./fuse-patch.js";
import { COPPER, SOFT } from "./look.js";
import type { Measure } from "./measure.js";
import { box, line, n, sheet, textIn } from "./svg.js";

export interface MapGroup {
  readonly title: string;
  readonly subtitle: string;
  readonly fuses: readonly { readonly number: string; readonly patch: FusePatch; readonly feeds: string }[];
}

const WIDTH_MM = 176;
const GUTTER_MM = 8;
const COLUMNS = 2;
const COLUMN_MM = (WIDTH_MM - GUTTER_MM * (COLUMNS - 1)) / COLUMNS;
const TEXT = 3.9;
const ROW_MM = 6.6;
const HEAD_MM = 12;

interface Piece {
  readonly svg: string;
  readonly heightMm: number;
  readonly words: string;
}

/** Every fuse of the coach and what it feeds, for the inside of the door; as many sheets as it takes, a group never torn inside a row. */
export function doorMap(groups: readonly MapGroup[], maxHeightMm: number, measure: Measure): Drawing[] {
  const pieces = groups.flatMap((group) => piecesOf(group, maxHeightMm, measure));
  const sheets: Piece[][][] = [];
  let column: Piece[] = [];
  let columns: Piece[][] = [column];
  const heightOf = (list: readonly Piece[]) => list.reduce((sum, piece) => sum + piece.heightMm, 0);
  for (const piece of pieces) {
    if (column.length > 0 && heightOf(column) + piece.heightMm > maxHeightMm) {
      if (columns.length === COLUMNS) {
        sheets.push(columns);
        columns = [];
      }
      column = [];
      columns.push(column);
    }
    column.push(piece);
  }
  if (column.length > 0) sheets.push(columns);
  return sheets.map((one, i) => {
    const height = Math.max(...one.map(heightOf)) + 1;
    const svg = one.map((list, c) => stacked(list, c * (COLUMN_MM + GUTTER_MM))).join("");
    const rules =
      one.length > 1 ? line(COLUMN_MM + GUTTER_MM / 2, 0, COLUMN_MM + GUTTER_MM / 2, height, 0.15, "#a59d88") : "";
    const title = `Fuse map, sheet ${i + 1} of ${sheets.length}`;
    const alt = `${title}. ${one
      .flat()
      .map((piece) => piece.words)
      .join(" ")}`;
    return { svg: sheet(WIDTH_MM, height, title, svg + rules), alt, widthMm: WIDTH_MM };
  });
}

function stacked(list: readonly Piece[], x: number): string {
  let y = 0;
  return list
    .map((piece) => {
      const drawn = `<g transform="translate(${n(x)} ${n(y)})">${piece.svg}</g>`;
      y += piece.heightMm;
      return drawn;
    })
    .join("");
}

/** A group cut into pieces that fit a column; a continued piece says so. */
function piecesOf(group: MapGroup, maxHeightMm: number, measure: Measure): Piece[] {
  const rows = group.fuses.map((fuse) => rowOf(fuse, measure));
  const pieces: Piece[] = [];
  let at = 0;
  while (at < rows.length || pieces.length === 0) {
    const title = pieces.length === 0 ? group.title : `${group.title}, continued`;
    let svg =
      box(0, 1, 1.4, 9, { fill: COPPER, stroke: "none" }) +
      textIn(3.4, 5.2, COLUMN_MM - 4, title, { sizeMm: 4.6, isStrong: true }, measure).svg +
      textIn(3.4, 9.6, COLUMN_MM - 4, group.subtitle, { sizeMm: 3.3, colour: SOFT }, measure).svg;
    let y = HEAD_MM;
    const words: string[] = [`${title}:`];
    for (; at < rows.length && (y === HEAD_MM || y + rows[at]!.heightMm + 3 <= maxHeightMm); at++) {
      svg += `<g transform="translate(0 ${n(y)})">${rows[at]!.svg}</g>`;
      words.push(`${rows[at]!.words};`);
      y += rows[at]!.heightMm;
    }
    pieces.push({ svg, heightMm: y + 3, words: words.join(" ") });
  }
  return pieces;
}

function rowOf(fuse: MapGroup["fuses"][number], measure: Measure): Piece {
  const feeds = textIn(27, 4.5, COLUMN_MM - 27, fuse.feeds, { sizeMm: TEXT }, measure);
  const heightMm = ROW_MM + (feeds.lines - 1) * TEXT * 1.15;
  const number = textIn(0, 4.5, 13, fuse.number, { sizeMm: TEXT, isStrong: true }, measure);
  const svg =
    number.svg +
    fuseBox(14, 3.2, fuse.patch) +
    feeds.svg +
    line(0, heightMm - 0.1, COLUMN_MM, heightMm - 0.1, 0.1, "#d6d0bf");
  return { svg, heightMm, words: `${fuse.number} ${fuse.patch.patch} A ${fuse.feeds}` };
}
