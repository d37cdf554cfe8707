import { boxOfWords, overlaps, type Pen, ring, type TextBox, type Words, wordsAt } from "./block.js";
import type { CurvePoint } from "./curve.js";
import type { Field } from "./plot.js";

export type Place = readonly [xPx: number, yPx: number];

/** Keeps the rings and words of one plot apart: what was placed first stays, what finds no room is left to the legend. */
export class Placer {
  private readonly taken: TextBox[] = [];
  private readonly lines: Place[] = [];

  constructor(
    private readonly field: Field,
    private readonly pen: Pen,
  ) {}

  /** Points along lines that words should rather not cover. */
  avoid(places: readonly Place[]): void {
    this.lines.push(...places);
  }

  private isFree(box: TextBox): boolean {
    const { field } = this;
    const isInside =
      box.x >= field.x + 2 &&
      box.y >= field.y + 2 &&
      box.x + box.w <= field.x + field.w - 2 &&
      box.y + box.h <= field.y + field.h - 2;
    return isInside && this.taken.every((other) => !overlaps(box, other, 3));
  }

  private covered(box: TextBox): number {
    return this.lines.filter(
      ([x, y]) => x > box.x - 2 && x < box.x + box.w + 2 && y > box.y - 1 && y < box.y + box.h + 1,
    ).length;
  }

  /** A ring on the first free place, and where it stands; no place where none is free. */
  ring(mark: string, places: readonly Place[]): { svg: string; at?: Place } {
    const r = this.pen.sizes.ringPx + 1;
    for (const [x, y] of places) {
      const box = { x: x - r, y: y - r, w: 2 * r, h: 2 * r };
      if (!this.isFree(box)) continue;
      this.taken.push(box);
      return { svg: ring(x, y, mark, this.pen), at: [x, y] };
    }
    return { svg: "" };
  }

  /**
   * A ring with its words beside it, on the first place along the line where both are free and the words hide no line; else the ring alone, on the first
   * free place.
   */
  ringWithWords(mark: string, text: string, how: Words, places: readonly Place[]): string {
    const r = this.pen.sizes.ringPx + 1;
    for (const [i, [x, y]] of places.entries()) {
      if (i % 3 !== 0) continue;
      const round = { x: x - r, y: y - r, w: 2 * r, h: 2 * r };
      if (!this.isFree(round)) continue;
      const beside = besideRing([x, y]).find(([px, py, anchor]) => {
        const box = boxOfWords(px, py, text, { ...how, anchor });
        return this.covered(box) === 0 && !overlaps(box, round) && this.isFree(box);
      });
      if (beside === undefined) continue;
      const [px, py, anchor] = beside;
      const set = { halo: this.pen.palette.sheet, ...how, anchor };
      this.taken.push(round, boxOfWords(px, py, text, set));
      return ring(x, y, mark, this.pen) + wordsAt(px, py, text, set);
    }
    return this.ring(mark, places).svg;
  }

  /** Words on the free place that covers least of the lines, or nothing where more than `mostCovered` points would be hidden. */
  words(
    text: string,
    how: Words,
    places: readonly (readonly [xPx: number, yPx: number, anchor: Words["anchor"]])[],
    mostCovered = Number.POSITIVE_INFINITY,
  ): string {
    const free = places
      .map(([x, y, anchor]) => {
        const set = { halo: this.pen.palette.sheet, ...how, ...(anchor === undefined ? {} : { anchor }) };
        const box = boxOfWords(x, y, text, set);
        return { x, y, set, box, covered: this.covered(box) };
      })
      .filter((place) => place.covered <= mostCovered && this.isFree(place.box))
      .sort((a, b) => a.covered - b.covered);
    const best = free[0];
    if (best === undefined) return "";
    this.taken.push(best.box);
    return wordsAt(best.x, best.y, text, best.set);
  }
}

/** Words to the right or the left of a ring, a little above or below where a curve leaves it. */
const besideRing = ([x, y]: Place): [number, number, "start" | "end"][] =>
  [4.5, -8, 17].flatMap((down): [number, number, "start" | "end"][] => [
    [x + 15, y + down, "start"],
    [x - 15, y + down, "end"],
  ]);

/** Places every few pixels along a curve inside the field, the one nearest to `startRatio` of its length first. */
export function placesAlong(field: Field, points: readonly CurvePoint[], startRatio = 0.5): Place[] {
  const pixels = points.map((point) => field.at(point));
  const isInside = ([x, y]: Place): boolean =>
    x > field.x && x < field.x + field.w && y > field.y && y < field.y + field.h;
  const fine: Place[] = [];
  for (let i = 1; i < pixels.length; i++) {
    const [a, b] = [pixels[i - 1]!, pixels[i]!];
    const steps = Math.max(1, Math.ceil(Math.hypot(b[0] - a[0], b[1] - a[1]) / 4));
    for (let k = 0; k < steps; k++) {
      const place: Place = [a[0] + (k / steps) * (b[0] - a[0]), a[1] + (k / steps) * (b[1] - a[1])];
      if (isInside(place)) fine.push(place);
    }
  }
  const start = Math.round(startRatio * Math.max(0, fine.length - 1));
  return fine
    .map((place, i) => ({ place, far: Math.abs(i - start) }))
    .sort((a, b) => a.far - b.far)
    .map(({ place }) => place);
}
