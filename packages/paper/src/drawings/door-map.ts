import type { Drawing } from "../document/blocks.js";
import { fuseBox } from "./fuse-box.js";
import type { FusePatch } from "./fuse-patch.js";
import { COPPER, SOFT } from "./look.js";
import type { Measure } from "./measure.js";
import { box, line, MIN_CONDENSED, n, sheet, textAt, textIn } from "./svg.js";

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
const ROW_MM = 5.7;
const HEAD_MM = 11;
const FOOT_MM = 2.6;
/** A group is not begun at the foot of a column for fewer rows than these. */
const LEAST_ROWS = 4;

interface Piece {
  readonly svg: string;
  readonly heightMm: number;
  readonly words: string;
}

/** Every fuse of the coach and what it feeds, for the inside of the door; as many sheets as it takes, a group never torn inside a row. */
export function doorMap(groups: readonly MapGroup[], maxHeightMm: number, measure: Measure): Drawing[] {
  const sheets: Piece[][][] = [];
  let column: Piece[] = [];
  let columns: Piece[][] = [column];
  const heightOf = (list: readonly Piece[]) => list.reduce((sum, piece) => sum + piece.heightMm, 0);
  const nextColumn = () => {
    if (columns.length === COLUMNS) {
      sheets.push(columns);
      columns = [];
    }
    column = [];
    columns.push(column);
  };
  for (const group of groups) {
    const rows = group.fuses.map((fuse) => rowOf(fuse, measure));
    let from = 0;
    do {
      const room = maxHeightMm - heightOf(column);
      const least = rows.slice(from, from + LEAST_ROWS).reduce((sum, row) => sum + row.heightMm, HEAD_MM + FOOT_MM);
      if (column.length > 0 && least > room) {
        nextColumn();
        continue;
      }
      const { piece, next } = pieceOf(group, rows, from, room, measure);
      column.push(piece);
      from = next;
    } while (from < rows.length);
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

/** As much of a group, from one row on, as the room holds, and at least one row; a continued piece says so. */
function pieceOf(
  group: MapGroup,
  rows: readonly Piece[],
  from: number,
  roomMm: number,
  measure: Measure,
): { piece: Piece; next: number } {
  const title = from === 0 ? group.title : `${group.title}, continued`;
  const subtitleMm = measure(group.subtitle, false) * 3.3;
  const room = COLUMN_MM - 3.4 - subtitleMm - 3;
  // On one line where both stand whole there, else the title above.
  const isOneLine = measure(title, true) * 4.4 * MIN_CONDENSED <= room;
  let svg =
    box(0, 1, 1.4, isOneLine ? 5.6 : 8.4, { fill: COPPER, stroke: "none" }) +
    textIn(3.4, 5.2, isOneLine ? room : COLUMN_MM - 4, title, { sizeMm: 4.4, isStrong: true }, measure).svg +
    (isOneLine
      ? textAt(COLUMN_MM, 5.2, group.subtitle, { sizeMm: 3.3, colour: SOFT, anchor: "end" })
      : textIn(3.4, 9, COLUMN_MM - 4, group.subtitle, { sizeMm: 3.3, colour: SOFT }, measure).svg);
  let y = isOneLine ? HEAD_MM - 3.4 : HEAD_MM;
  let next = from;
  const words: string[] = [`${title}:`];
  for (; next < rows.length && (next === from || y + rows[next]!.heightMm + FOOT_MM <= roomMm); next++) {
    svg += `<g transform="translate(0 ${n(y)})">${rows[next]!.svg}</g>`;
    words.push(`${rows[next]!.words};`);
    y += rows[next]!.heightMm;
  }
  return { piece: { svg, heightMm: y + FOOT_MM, words: words.join(" ") }, next };
}

function rowOf(fuse: MapGroup["fuses"][number], measure: Measure): Piece {
  const feeds = textIn(27, 4.1, COLUMN_MM - 27, fuse.feeds, { sizeMm: TEXT }, measure);
  const heightMm = ROW_MM + (feeds.lines - 1) * TEXT * 1.15;
  const number = textIn(0, 4.1, 13, fuse.number, { sizeMm: TEXT, isStrong: true }, measure);
  const svg =
    number.svg +
    fuseBox(14, 2.75, fuse.patch, 11, 4.7) +
    feeds.svg +
    line(0, heightMm - 0.1, COLUMN_MM, heightMm - 0.1, 0.1, "#d6d0bf");
  return { svg, heightMm, words: `${fuse.number} ${fuse.patch.patch} A ${fuse.feeds}` };
}
