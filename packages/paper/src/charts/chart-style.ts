import { n } from "../drawings/svg.js";

/** Where a chart is looked at: in the workshop, in a dark coach, in full sun, or on paper in black only. */
export const CHART_THEMES = ["film", "night", "sun", "print"] as const;
export type ChartTheme = (typeof CHART_THEMES)[number];

export interface ChartLook {
  /** Width of the picture in CSS pixels, 320 to 1600; 900 where absent. Text keeps its size whatever the width. */
  readonly widthPx?: number;
  /** `film` where absent. */
  readonly theme?: ChartTheme;
}

/** How much room is left to a limit. `ample` solid, `tight` hatched, `fails` doubled, `open` dotted: a pattern as well as a colour. */
export const MARGINS = ["ample", "tight", "fails", "open"] as const;
export type ChartMargin = (typeof MARGINS)[number];

export interface Palette {
  readonly sheet: string;
  readonly wash: string;
  readonly rule: string;
  readonly soft: string;
  readonly ink: string;
  /** The one accent: the point that matters. */
  readonly copper: string;
  readonly copperWash: string;
  readonly margin: Readonly<Record<ChartMargin, string>>;
}

/** Film, night (dim amber, spares the eyes), sun (greatest contrast), print (black only: patterns alone must say everything). */
export const PALETTES: Readonly<Record<ChartTheme, Palette>> = {
  film: {
    sheet: "#fbf9f3",
    wash: "#ebe6d8",
    rule: "#d6d0bf",
    soft: "#5a626b",
    ink: "#1a2129",
    copper: "#a8501c",
    copperWash: "#f0dccb",
    margin: { ample: "#2c6a58", tight: "#8a5d00", fails: "#a01f2a", open: "#535d68" },
  },
  night: {
    sheet: "#15100b",
    wash: "#241b12",
    rule: "#3a2d1f",
    soft: "#b08d58",
    ink: "#e9bd80",
    copper: "#ff9a45",
    copperWash: "#3a2412",
    margin: { ample: "#c79a55", tight: "#ffb43a", fails: "#ff6a4d", open: "#a8966f" },
  },
  sun: {
    sheet: "#ffffff",
    wash: "#eeeeee",
    rule: "#b4b4b4",
    soft: "#2b2b2b",
    ink: "#000000",
    copper: "#7d3300",
    copperWash: "#ffe6d3",
    margin: { ample: "#00503c", tight: "#6b4700", fails: "#8f0012", open: "#333333" },
  },
  print: {
    sheet: "#ffffff",
    wash: "#ececec",
    rule: "#bdbdbd",
    soft: "#333333",
    ink: "#000000",
    copper: "#000000",
    copperWash: "#e2e2e2",
    margin: { ample: "#000000", tight: "#000000", fails: "#000000", open: "#000000" },
  },
};

/** Faces by name, the one the papers are set in first; the picture is laid out for the widest of the first three. */
export const CHART_FACES = "'Atkinson Hyperlegible Next','Atkinson Hyperlegible','DejaVu Sans','Segoe UI',sans-serif";

/** Type sizes and gaps in CSS pixels; nothing is set smaller than `axisPx`. */
export interface Sizes {
  readonly padPx: number;
  readonly titlePx: number;
  readonly subtitlePx: number;
  readonly labelPx: number;
  readonly notePx: number;
  readonly axisPx: number;
  /** Radius of the ring that ties a curve to its line in the legend. */
  readonly ringPx: number;
}

const PHONE: Sizes = { padPx: 14, titlePx: 19, subtitlePx: 15, labelPx: 15, notePx: 13, axisPx: 13, ringPx: 9.5 };
const DESK: Sizes = { padPx: 26, titlePx: 23, subtitlePx: 15, labelPx: 15, notePx: 13, axisPx: 13, ringPx: 9.5 };

export const sizesFor = (widthPx: number): Sizes => (widthPx < 560 ? PHONE : DESK);

/** A line's manner. Lines of a margin carry its pattern; the others are told apart by their dashes. */
export type LineManner =
  | ChartMargin
  | "ink"
  | "ink-dashed"
  | "ink-dotted"
  | "copper"
  | "copper-dashed"
  | "soft-dash-dot";

/** The strokes of one path in one manner: doubled lines are two strokes, the inner one in the colour of the sheet. */
export function strokesOf(d: string, manner: LineManner, palette: Palette, id: string): string {
  const stroke = (colour: string, widthPx: number, dash = "", cap = "butt"): string =>
    `<path d="${d}" fill="none" stroke="${colour}" stroke-width="${widthPx}" stroke-linejoin="round" stroke-linecap="${cap}"${dash === "" ? "" : ` stroke-dasharray="${dash}"`}/>`;
  switch (manner) {
    case "ample":
      return stroke(palette.margin.ample, 3);
    case "tight":
      return stroke(`url(#${id}-tight)`, 6);
    case "fails":
      return stroke(palette.margin.fails, 6.4) + stroke(palette.sheet, 2.4);
    case "open":
      return stroke(palette.margin.open, 3.6, "0 7", "round");
    case "ink":
      return stroke(palette.ink, 2);
    case "ink-dashed":
      return stroke(palette.ink, 2, "9 5");
    case "ink-dotted":
      return stroke(palette.ink, 2.4, "0 5", "round");
    case "copper":
      return stroke(palette.copper, 2.6);
    case "copper-dashed":
      return stroke(palette.copper, 2.6, "7 4");
    case "soft-dash-dot":
      return stroke(palette.soft, 1.8, "10 4 2 4");
  }
}

/** A limit: a line with short strokes on the side that is not allowed, as a drawing marks a wall; `side` is 1 for right or below, -1 for left or above. */
export function limitLine(
  from: readonly [number, number],
  to: readonly [number, number],
  side: 1 | -1,
  palette: Palette,
): string {
  const [dx, dy] = from[1] === to[1] ? [0, 4 * side] : [4 * side, 0];
  const d = (x: number, y: number): string => `M${n(from[0] + x)} ${n(from[1] + y)}L${n(to[0] + x)} ${n(to[1] + y)}`;
  const colour = palette.margin.fails;
  return `<path d="${d(0, 0)}" stroke="${colour}" stroke-width="2.2" fill="none"/><path d="${d(dx, dy)}" stroke="${colour}" stroke-width="8" stroke-dasharray="1.6 6.4" fill="none"/>`;
}

/** Fills by pattern: the four margins, the body of a fuse's band, and the grey of a second one. */
export type FillManner = ChartMargin | "band" | "band-second" | "doubt";

export const fillOf = (manner: FillManner, id: string): string => `url(#${id}-${manner})`;

/** The patterns a chart refers to, under ids of its own so that several charts can stand in one page. */
export function patternsOf(palette: Palette, id: string): string {
  const { margin, ink, copper } = palette;
  const pattern = (name: string, sizePx: number, content: string, turn = 0): string =>
    `<pattern id="${id}-${name}" width="${sizePx}" height="${sizePx}" patternUnits="userSpaceOnUse"${turn === 0 ? "" : ` patternTransform="rotate(${turn})"`}>${content}</pattern>`;
  const area = (sizePx: number, colour: string, opacity: number): string =>
    `<rect width="${sizePx}" height="${sizePx}" fill="${colour}" fill-opacity="${opacity}"/>`;
  return `<defs>${[
    pattern("ample", 8, area(8, margin.ample, 1)),
    pattern("tight", 6, `${area(6, margin.tight, 0.25)}<rect width="3" height="6" fill="${margin.tight}"/>`, 45),
    pattern(
      "fails",
      8,
      `<rect y="0" width="8" height="2.6" fill="${margin.fails}"/><rect y="5" width="8" height="1.2" fill="${margin.fails}"/>`,
    ),
    pattern(
      "open",
      7,
      `<circle cx="2" cy="2" r="1.35" fill="${margin.open}"/><circle cx="5.5" cy="5.5" r="1.35" fill="${margin.open}"/>`,
    ),
    pattern("band", 7, `${area(7, ink, 0.06)}<rect width="1" height="7" fill="${ink}" fill-opacity="0.4"/>`, 45),
    pattern(
      "band-second",
      7,
      `${area(7, ink, 0.03)}<rect width="1" height="7" fill="${ink}" fill-opacity="0.25"/>`,
      -45,
    ),
    pattern(
      "doubt",
      5,
      `${area(5, copper, 0.12)}<circle cx="2.5" cy="2.5" r="0.9" fill="${copper}" fill-opacity="0.75"/>`,
    ),
  ].join("")}</defs>`;
}
