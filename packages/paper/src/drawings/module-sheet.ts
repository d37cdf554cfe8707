import type { Drawing } from "../document/blocks.js";
import { fuseBox } from "./fuse-box.js";
import type { FusePatch } from "./fuse-patch.js";
import { COPPER, INK, type Margin, SHEET, SOFT } from "./look.js";
import type { Measure } from "./measure.js";
import { box, line, n, sheet, textAt, textIn } from "./svg.js";
import { wireLegend, wireLine, wirePatterns } from "./wire-line.js";

export interface ChannelRow {
  readonly channel: number;
  readonly fuse: FusePatch | undefined;
  /** "14 AWG, 12 ft"; empty where it was not seen. */
  readonly wire: string;
  /** Amps while on, which set the width of the wire; undefined where they are not known. */
  readonly currentA: number | undefined;
  readonly amps: string;
  readonly margin: Margin;
  readonly loads: string;
  /** A word where something is not ample. */
  readonly note: string;
}

export interface ModuleSheet {
  readonly title: string;
  /** Bank positions as they stand, "0110"; empty where the kind has no bank. */
  readonly positions: string;
  readonly onIs: "up" | "down" | "left" | "right" | undefined;
  readonly rows: readonly ChannelRow[];
  /** Channels that may dim as the options stand. */
  readonly dimmed: ReadonlySet<number>;
}

const WIDTH_MM = 176;
const BOX_W = 27;
const WIRE_END = 88;
const LOAD_X = 92;
const AMPS_X = WIDTH_MM - 0.5;

/** One module: its channels in order, the fuse in each, the wire as wide as its amps and patterned by its margin, and what it feeds. */
export function moduleSheet(module: ModuleSheet, measure: Measure): Drawing {
  let y = 1;
  let rows = "";
  for (const row of module.rows) {
    const drawn = channelRow(row, y, module.dimmed.has(row.channel), measure);
    rows += drawn.svg;
    y += drawn.heightMm;
  }
  const bottom = Math.max(y + 1, 30);
  const content =
    wirePatterns() +
    box(0.5, 0.5, BOX_W, bottom - 0.5, { fill: SHEET, widthMm: 0.6 }) +
    rows +
    miniBank(module, 2.5, bottom - 10) +
    wireLegend(module.dimmed.size > 0 ? 24 : 0.5, bottom + 6, measure) +
    (module.dimmed.size > 0
      ? dimMark(2, bottom + 4.9) + textAt(4.6, bottom + 6, "may dim", { sizeMm: 3.3, colour: COPPER, isStrong: true })
      : "");
  return { svg: sheet(WIDTH_MM, bottom + 8, module.title, content), alt: altOf(module), widthMm: WIDTH_MM };
}

function channelRow(
  row: ChannelRow,
  top: number,
  mayDim: boolean,
  measure: Measure,
): { svg: string; heightMm: number } {
  const loads = textIn(LOAD_X, 0, 52, row.loads, { sizeMm: 4, isStrong: row.margin !== "spare" }, measure);
  const note =
    row.note === "" ? { svg: "", lines: 0 } : textIn(LOAD_X, 0, 82, row.note, { sizeMm: 3.4, colour: SOFT }, measure);
  const heightMm = Math.max(10.4, 4.6 * loads.lines + 3.9 * note.lines + 3);
  const mid = top + (heightMm - 4.6 * (loads.lines - 1) - 3.9 * note.lines) / 2;
  const down = (svg: string, dy: number) => (svg === "" ? "" : `<g transform="translate(0 ${n(dy)})">${svg}</g>`);
  const x0 = BOX_W + 0.5;
  const svg =
    textAt(BOX_W - 2, mid + 1.6, String(row.channel), { sizeMm: 4.6, isStrong: true, anchor: "end" }) +
    (mayDim ? dimMark(BOX_W - 14.5, mid) : "") +
    wireLine(x0, WIRE_END, mid, row.currentA, row.margin) +
    (row.fuse === undefined ? "" : fuseBox(x0 + 5, mid, row.fuse)) +
    wireWord(row, x0 + 19, mid, measure) +
    down(loads.svg, mid + 1.5) +
    down(note.svg, mid + 1.5 + 4.6 * (loads.lines - 1) + 4.4) +
    textAt(AMPS_X, mid + 1.5, row.amps, { sizeMm: 4, colour: SOFT, anchor: "end" }) +
    line(BOX_W + 0.5, top + heightMm, WIDTH_MM, top + heightMm, 0.1, "#d6d0bf");
  return { svg, heightMm };
}

/** The wire's size stands on its line, on a white ground so that the line never runs through the letters. */
function wireWord(row: ChannelRow, x: number, mid: number, measure: Measure): string {
  if (row.wire === "") return "";
  const room = WIRE_END - x - 4;
  const w = Math.min(room, measure(row.wire, false) * 3.3 + 2);
  return (
    box(x - 1, mid - 2.2, w + 0.6, 4.4, { fill: "#ffffff", stroke: "none" }) +
    textIn(x, mid + 1.15, room - 1, row.wire, { sizeMm: 3.3 }, measure).svg
  );
}

/** A ramp: this channel may dim. */
const dimMark = (x: number, y: number): string =>
  `<path d="M${n(x - 1.8)} ${n(y + 1.5)}H${n(x + 1.8)}V${n(y - 1.7)}Z" fill="${COPPER}"/>`;

function miniBank(module: ModuleSheet, x: number, y: number): string {
  if (module.positions === "") return "";
  const isUpright = module.onIs !== "left" && module.onIs !== "right";
  if (!isUpright) return textAt(x, y + 6, module.positions, { sizeMm: 4 });
  const pitch = Math.min(3, 15.5 / module.positions.length);
  const onTop = module.onIs !== "down";
  return [...module.positions]
    .map((sign, i) => {
      const sx = x + i * pitch;
      const frame = box(sx, y, pitch * 0.75, 7, { widthMm: 0.25, ...(sign === "?" ? { dash: "0.6 0.5" } : {}) });
      if (sign === "?") return frame;
      const isTop = (sign === "1") === onTop;
      return (
        frame + box(sx + 0.35, isTop ? y + 0.35 : y + 3.6, pitch * 0.75 - 0.7, 3.05, { fill: INK, stroke: "none" })
      );
    })
    .join("");
}

const altOf = (module: ModuleSheet): string =>
  `${module.title}. ${module.rows.map((row) => `Channel ${row.channel}: ${row.fuse === undefined ? "no fuse known" : `${row.fuse.patch} A`}, ${row.loads || "nothing known"}${row.note === "" ? "" : `, ${row.note}`}`).join("; ")}.`;
