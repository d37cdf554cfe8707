import type { FusePatch } from "./fuse-patch.js";
import { INK } from "./look.js";
import { box, line, textAt } from "./svg.js";

/** A fuse as it lies in a wire: its number on the colour of its rating, in the middle of `yMm`. */
export const fuseBox = (xMm: number, yMm: number, patch: FusePatch, widthMm = 11, heightMm = 5.4): string =>
  box(xMm, yMm - heightMm / 2, widthMm, heightMm, { fill: patch.fill, widthMm: 0.35, r: 0.9 }) +
  textAt(xMm + widthMm / 2, yMm + 1.4, patch.patch, {
    sizeMm: 3.9,
    isStrong: true,
    colour: patch.ink,
    anchor: "middle",
  });

/** IEC 60617-7, fuse (07-21-01, from memory): a rectangle with the conductor through it. */
export const fuseSymbol = (xMm: number, yMm: number): string =>
  box(xMm, yMm - 1.5, 8, 3, { fill: "#ffffff", widthMm: 0.4 }) + line(xMm - 1, yMm, xMm + 9, yMm, 0.4);

/** IEC 60617-6, battery (06-15-01, from memory): the longer line is the positive pole. Drawn with its plates upright. */
export const batterySymbol = (xMm: number, yMm: number): string =>
  [0, 3.6]
    .map(
      (dx) =>
        line(xMm + dx, yMm - 2, xMm + dx, yMm + 2, 1, INK) +
        line(xMm + dx + 1.5, yMm - 4, xMm + dx + 1.5, yMm + 4, 0.45, INK),
    )
    .join("");

/** IEC 60617-7, switch, make contact (07-02-01, from memory), drawn open. */
export const switchSymbol = (xMm: number, yMm: number): string =>
  box(xMm, yMm - 0.5, 7, 1, { fill: "#ffffff", stroke: "none" }) + line(xMm, yMm, xMm + 6.2, yMm - 3, 0.5);
