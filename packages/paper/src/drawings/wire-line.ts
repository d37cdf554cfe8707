import { MARGIN_COLOUR, type Margin, SOFT } from "./look.js";
import type { Measure } from "./measure.js";
import { n, textAt } from "./svg.js";

/** Width of a wire on paper by the amps it carries: wider is more, never thinner than can be seen, never wider than its row. */
export const wireWidthMm = (currentA: number | undefined): number =>
  currentA === undefined ? 1.2 : Math.min(6, Math.max(0.7, 0.32 * currentA));

/** The patterns that a drawing with wires needs, once in it. */
export const wirePatterns = (): string =>
  `<defs><pattern id="w-tight" width="2" height="2" patternUnits="userSpaceOnUse" patternTransform="rotate(52)"><rect width="2" height="2" fill="#ffffff"/><rect width="1" height="2" fill="${MARGIN_COLOUR.tight}"/></pattern><pattern id="w-open" width="2" height="2" patternUnits="userSpaceOnUse"><rect width="2" height="2" fill="#ffffff"/><circle cx="0.6" cy="0.6" r="0.42" fill="${MARGIN_COLOUR.open}"/><circle cx="1.6" cy="1.6" r="0.42" fill="${MARGIN_COLOUR.open}"/></pattern></defs>`;

const bar = (x1: number, x2: number, y: number, h: number, fill: string, extra = ""): string =>
  `<rect x="${n(x1)}" y="${n(y - h / 2)}" width="${n(x2 - x1)}" height="${n(h)}" fill="${fill}"${extra}/>`;

/** A wire from x1 to x2, never wider than `mostMm`: solid where ample, hatched where tight, doubled where it fails, dotted where a reading is wanted, dashed where spare. */
export function wireLine(
  x1: number,
  x2: number,
  y: number,
  currentA: number | undefined,
  margin: Margin,
  mostMm = 6,
): string {
  const colour = MARGIN_COLOUR[margin];
  const w = Math.min(mostMm, wireWidthMm(currentA));
  const patterned = Math.min(mostMm, Math.max(w, 1.5));
  switch (margin) {
    case "ample":
      return bar(x1, x2, y, w, colour);
    case "tight":
      return bar(x1, x2, y, patterned, "url(#w-tight)", ` stroke="${colour}" stroke-width="0.15"`);
    case "fails": {
      const each = Math.min(mostMm / 3, Math.max(0.6, w / 3));
      return bar(x1, x2, y - each, each, colour) + bar(x1, x2, y + each, each, colour);
    }
    case "open":
      return bar(x1, x2, y, patterned, "url(#w-open)");
    case "spare":
      return `<path d="M${n(x1)} ${n(y)}H${n(x2)}" stroke="${colour}" stroke-width="0.3" stroke-dasharray="0.6 1.8"/>`;
  }
}

/** What the patterns mean, as one line of a legend. */
export function wireLegend(x: number, y: number, measure: Measure): string {
  const items: readonly (readonly [Margin, string])[] = [
    ["ample", "ample"],
    ["tight", "tight"],
    ["fails", "over its limit"],
    ["open", "a reading settles it"],
    ["spare", "spare"],
  ];
  let at = x;
  return items
    .map(([margin, word]) => {
      const drawn =
        wireLine(at, at + 9, y - 1.1, 4, margin) + textAt(at + 10.5, y, word, { sizeMm: 3.3, colour: SOFT });
      at += 14.5 + measure(word, false) * 3.3;
      return drawn;
    })
    .join("");
}
