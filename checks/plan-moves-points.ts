/** Cost in cents, wish value in weights, wires moved. */
export type Point = readonly [cost: number, value: number, wires: number];

/** Ways of a plan that the tally asks for: what would the front be without them? */
export const MEANS = [
  "move within a module",
  "move to a neighbour",
  "move to a spare channel",
  "move to a channel that was left",
  "move beyond the old channels",
  "steady feed",
  "conductor upgrade",
  "stock on hand",
  "freed module reused",
  "fuse changed",
  "bank set anew",
  "module replaced",
  "channel set by itself",
] as const;
export type Means = (typeof MEANS)[number];
export const means = (name: Means): number => 1 << MEANS.indexOf(name);

const beats = (a: Point, b: Point): boolean => a[0] <= b[0] && a[1] >= b[1] && a[2] <= b[2];

/** Keeps the unbeaten points of many. */
export class Points {
  readonly kept: Point[] = [];
  add(point: Point): boolean {
    for (const other of this.kept) if (beats(other, point)) return false;
    let at = 0;
    for (const other of this.kept) if (!beats(point, other)) this.kept[at++] = other;
    this.kept.length = at;
    this.kept.push(point);
    return true;
  }
  covers(point: Point): boolean {
    return this.kept.some((other) => beats(other, point));
  }
  addAll(points: Iterable<Point>): void {
    for (const point of points) this.add(point);
  }
  text(): string[] {
    return this.kept.map(pointText).sort();
  }
}
export const pointText = ([cost, value, wires]: Point): string => `${cost} ${value.toFixed(3)} ${wires}`;
