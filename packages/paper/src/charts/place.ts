import { boxOfWords, overlaps, type Pen, ring, type TextBox, type Words, wordsAt } from "./block.js";
import type { CurvePoint } from "./curve.js";
import type { Field } from "./plot.js";

/** Keeps the rings and words of one plot apart: what was placed first stays, what finds no room is left to the legend. */
export class Placer {
  private readonly taken: TextBox[] = [];

  constructor(
    private readonly field: Field,
    private readonly pen: Pen,
  ) {}

  private isFree(box: TextBox): boolean {
    const { field } = this;
    const isInside =
      box.x >= field.x + 2 &&
      box.y >= field.y + 2 &&
      box.x + box.w <= field.x + field.w - 2 &&
      box.y + box.h <= field.y + field.h - 2;
    return isInside && this.taken.every((other) => !overlaps(box, other, 3));
  }

  /** A ring on the first free place, or nothing. Places in pixels. */
  ring(mark: string, places: readonly (readonly [number, number])[]): string {
    const r = this.pen.sizes.ringPx + 1;
    for (const [x, y] of places) {
      const box = { x: x - r, y: y - r, w: 2 * r, h: 2 * r };
      if (!this.isFree(box)) continue;
      this.taken.push(box);
      return ring(x, y, mark, this.pen);
    }
    return "";
  }

  /** Words on the first free place, or nothing. Places are baselines in pixels with their anchor. */
  words(text: string, how: Words, places: readonly (readonly [number, number, Words["anchor"]])[]): string {
    for (const [x, y, anchor] of places) {
      const set = { ...how, ...(anchor === undefined ? {} : { anchor }) };
      const box = boxOfWords(x, y, text, set);
      if (!this.isFree(box)) continue;
      this.taken.push(box);
      return wordsAt(x, y, text, { halo: this.pen.palette.sheet, ...set });
    }
    return "";
  }

  /** Keeps a place free of words, for something drawn there. */
  keep(box: TextBox): void {
    this.taken.push(box);
  }
}

/** Places along a curve in pixels, spread so that early ones lie far from each other; points outside the field are left out. */
export function placesAlong(field: Field, points: readonly CurvePoint[], startRatio = 0.5): [number, number][] {
  const pixels = points.map((point) => field.at(point));
  const lengths = [0];
  const inside = ([x, y]: readonly [number, number]): boolean =>
    x > field.x && x < field.x + field.w && y > field.y && y < field.y + field.h;
  const fine: [number, number][] = [];
  for (let i = 1; i < pixels.length; i++) {
    const [a, b] = [pixels[i - 1]!, pixels[i]!];
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    lengths.push(lengths[i - 1]! + length);
    const steps = Math.max(1, Math.ceil(length / 4));
    for (let k = 0; k < steps; k++) {
      const t = k / steps;
      const place: [number, number] = [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])];
      if (inside(place)) fine.push(place);
    }
  }
  const start = Math.round(startRatio * Math.max(0, fine.length - 1));
  return fine
    .map((place, i) => ({ place, far: Math.abs(i - start) }))
    .sort((a, b) => a.far - b.far)
    .map(({ place }) => place);
}
