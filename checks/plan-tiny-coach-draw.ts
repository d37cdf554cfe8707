import type { CoachRecord, Job } from "@fusebook/core/record";

/** mulberry32: small, seeded, in the public domain. */
function chanceOf(seed: number): () => number {
  let a = seed >>> 0;
  return () => {
    a = (a + 0x6d2b79f5) >>> 0;
    let t = a;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

export const exact = (value: number) => ({ value, basis: "measured", plusMinus: 0 });
export const bankOf = (settings: readonly (readonly string[])[]) => ({
  switches: 4,
  address: {
    kind: "weights",
    coding: "binary",
    firstAddress: 1,
    switches: [
      { switch: 1, weight: 2, onMeans: 0 },
      { switch: 2, weight: 1, onMeans: 1 },
    ],
  },
  // Switch 3 and 4 enable blocks one and two.
  options: settings.map((enables) => ({
    enables,
    set: ["b1", "b2"].map((block, i) => ({ switch: 3 + i, position: enables.includes(block) ? 1 : 0 })),
  })),
});

export interface TinyMoves {
  readonly record: CoachRecord;
  readonly job: Job;
}

/** Picks by a seed. */
export class Draw {
  private readonly chance: () => number;
  constructor(seed: number) {
    this.chance = chanceOf(seed);
  }
  pick<T>(...items: T[]): T {
    return items[Math.floor(this.chance() * items.length)] as T;
  }
  is(share: number): boolean {
    return this.chance() < share;
  }
}
