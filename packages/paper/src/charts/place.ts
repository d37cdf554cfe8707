import { boxOfWords, overlaps, type Pen, ring, type TextBox, type Words, wordsAt } from "./block.js";
import type { CurvePoint } from "./curve.js";
import type { Field } from "./plot.js";

export type Place = readonly [xPx: number, yPx: number];

const CELL_PX = 5;
const cellOf = (x: number, y: number): number => x * 4096 + y;

/** Keeps the rings and words of one plot apart: what was placed first stays, what finds no room is left to the legend. */
export class Placer {
  private readonly taken: TextBox[] = [];
  /** Cells of the field through which a line runs. */
  private readonly crossed = new Set<number>();

  constructor(
    private readonly field: Field,
    private readonly pen: Pen,
  ) {}

  /** Points along lines that words should rather not cover. */
  avoid(places: readonly Place[]): void {
    for (const [x, y] of places) this.crossed.add(cellOf(Math.floor(x / CELL_PX), Math.floor(y / CELL_PX)));
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

  /** How much of the lines a box would hide. */
  private covered(box: TextBox): number {
    let cells = 0;
    const [right, bottom] = [Math.floor((box.x + box.w) / CELL_PX), Math.floor((box.y + box.h) / CELL_PX)];
    for (let x = Math.floor(box.x / CELL_PX); x <= right; x++)
      for (let y = Math.floor(box.y / CELL_PX); y <= bottom; y++) if (this.crossed.has(cellOf(x, y))) cells += 1;
    return cells;
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
    const { w, h, y: above } = boxOfWords(0, 0, text, how);
    for (const [i, [x, y]] of places.entries()) {
      if (i % 3 !== 0 || w > this.field.w) continue;
      const round = { x: x - r, y: y - r, w: 2 * r, h: 2 * r };
      if (!this.isFree(round)) continue;
      const beside = besideRing([x, y]).find(([px, py, anchor]) => {
        const box = { x: anchor === "end" ? px - w : px, y: py + above, w, h };
        return this.isFree(box) && !overlaps(box, round) && this.covered(box) === 0;
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

/** The part of a stretch that lies in the field, as shares of its length; undefined where none does. */
function partInside(field: Field, a: Place, b: Place): [from: number, to: number] | undefined {
  let [from, to] = [0, 1];
  const sides: [number, number, number, number][] = [
    [a[0], b[0], field.x, field.x + field.w],
    [a[1], b[1], field.y, field.y + field.h],
  ];
  for (const [start, end, least, most] of sides) {
    if (start === end) {
      if (start < least || start > most) return undefined;
      continue;
    }
    const [enter, leave] = [(least - start) / (end - start), (most - start) / (end - start)].sort((p, q) => p - q);
    from = Math.max(from, enter!);
    to = Math.min(to, leave!);
  }
  return from < to ? [from, to] : undefined;
}

const STEP_PX = 4;

/** Places every few pixels along a curve inside the field, the one nearest to `startRatio` of its length first. */
export function placesAlong(field: Field, points: readonly CurvePoint[], startRatio = 0.5): Place[] {
  const pixels = points.map((point) => field.at(point));
  const fine: Place[] = [];
  for (let i = 1; i < pixels.length; i++) {
    const [a, b] = [pixels[i - 1]!, pixels[i]!];
    const part = partInside(field, a, b);
    if (part === undefined) continue;
    const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
    const steps = Math.max(1, Math.ceil((Math.hypot(dx, dy) * (part[1] - part[0])) / STEP_PX));
    for (let k = 0; k < steps; k++) {
      const t = part[0] + ((part[1] - part[0]) * k) / steps;
      fine.push([a[0] + t * dx, a[1] + t * dy]);
    }
  }
  const start = Math.round(startRatio * Math.max(0, fine.length - 1));
  return fine
    .map((place, i) => ({ place, far: Math.abs(i - start) }))
    .sort((a, b) => a.far - b.far)
    .map(({ place }) => place);
}
