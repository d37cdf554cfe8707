import { bitsOf, grayOf } from "../gray.js";
import { fitOf, type SwitchClass } from "./columns.js";
import type { Coding, WeightsCode } from "./inference.js";

/** What a family of rules has in common. */
export interface FamilyShape {
  readonly coding: Coding;
  readonly firstAddress: number;
  readonly counting: number;
}

/** The coded value of an address under a shape, or undefined where the shape cannot give it. */
export function codedValue(shape: FamilyShape, address: number): number | undefined {
  const value = address - shape.firstAddress;
  if (value < 0 || bitsOf(value) > shape.counting || value > 0xffff) return undefined;
  return shape.coding === "gray" ? grayOf(value) : value;
}

/** One way to place a bit: on which switch, and whether ON counts. */
export interface Seat {
  readonly switch: number;
  readonly onMeans: 0 | 1;
}

/**
 * All rules of one shape that fit the samples: bit b may sit on a class where its values over the samples match the class's column. Rules are
 * the ways to give every bit a switch of its own, counted over how many switches of each class are used.
 */
export class Family {
  /** `fits[b][c]`: ways for bit b on a switch of class c. */
  readonly fits: readonly (readonly { same: boolean; opposite: boolean }[])[];
  readonly rules: bigint;
  private readonly stride: readonly number[];
  private readonly ways: Map<number, bigint>[] = [];

  constructor(
    readonly shape: FamilyShape,
    readonly classes: readonly SwitchClass[],
    coded: readonly number[],
  ) {
    this.fits = Array.from({ length: shape.counting }, (_, bit) => {
      const bits = coded.map((value) => ((value >>> bit) & 1) as 0 | 1);
      return classes.map((each) => fitOf(each.column, bits));
    });
    let stride = 1;
    this.stride = classes.map((each) => {
      const here = stride;
      stride *= each.members.length + 1;
      return here;
    });
    this.rules = this.waysFrom(0, 0);
  }

  private used(state: number, c: number): number {
    return Math.floor(state / this.stride[c]!) % (this.classes[c]!.members.length + 1);
  }

  private free(state: number, c: number): number {
    return this.classes[c]!.members.length - this.used(state, c);
  }

  /** In how many ways can the bits from `bit` up be seated when `state` says how many switches of each class are taken? */
  private waysFrom(bit: number, state: number): bigint {
    if (bit === this.shape.counting) return 1n;
    this.ways[bit] ??= new Map();
    const memo = this.ways[bit];
    const before = memo.get(state);
    if (before !== undefined) return before;
    let total = 0n;
    this.fits[bit]!.forEach((fit, c) => {
      const polarities = Number(fit.same) + Number(fit.opposite);
      const free = this.free(state, c);
      if (polarities > 0 && free > 0)
        total += BigInt(polarities * free) * this.waysFrom(bit + 1, state + this.stride[c]!);
    });
    memo.set(state, total);
    return total;
  }

  /** For each bit: every seat that at least one of the rules gives it, by switch. */
  seats(): Seat[][] {
    let states = new Set([0]);
    return this.fits.map((fits, bit) => {
      const next = new Set<number>();
      const here: Seat[] = [];
      fits.forEach((fit, c) => {
        let isUsed = false;
        for (const state of states) {
          const after = state + this.stride[c]!;
          if ((fit.same || fit.opposite) && this.free(state, c) > 0 && this.waysFrom(bit + 1, after) > 0n) {
            next.add(after);
            isUsed = true;
          }
        }
        if (isUsed) for (const member of this.classes[c]!.members) here.push(...seatsOn(member, fit));
      });
      states = next;
      return here.sort((a, b) => a.switch - b.switch || b.onMeans - a.onMeans);
    });
  }

  /** The rule of this rank, 0 up to `rules` - 1. Low ranks keep to the order of the switches and to ON counting where the samples allow it. */
  ruleAt(rank: bigint): WeightsCode {
    let left = rank;
    let state = 0;
    const taken = new Set<number>();
    const switches: { switch: number; weight: number; onMeans: 0 | 1 }[] = [];
    for (let bit = 0; bit < this.shape.counting; bit++) {
      const wanted = (switches.at(-1)?.switch ?? 0) + 1;
      const choices = this.fits[bit]!.flatMap((fit, c) => {
        const members = this.classes[c]!.members.filter((member) => !taken.has(member.switch));
        return members.flatMap((member) => seatsOn(member, fit).map((seat) => ({ seat, c })));
      }).sort((a, b) => away(a.seat.switch, wanted) - away(b.seat.switch, wanted) || b.seat.onMeans - a.seat.onMeans);
      for (const { seat, c } of choices) {
        const ways = this.waysFrom(bit + 1, state + this.stride[c]!);
        if (left < ways) {
          switches.push({ switch: seat.switch, weight: 2 ** bit, onMeans: seat.onMeans });
          taken.add(seat.switch);
          state += this.stride[c]!;
          break;
        }
        left -= ways;
      }
    }
    return { kind: "weights", coding: this.shape.coding, firstAddress: this.shape.firstAddress, switches };
  }
}

/** The next switch up first, then the ones after it, then those before. */
const away = (number: number, wanted: number): number => (number >= wanted ? number - wanted : 32 + number);

function seatsOn(
  member: { readonly switch: number; readonly flip: 0 | 1 },
  fit: { readonly same: boolean; readonly opposite: boolean },
): Seat[] {
  const seats: Seat[] = [];
  if (fit.same) seats.push({ switch: member.switch, onMeans: member.flip === 1 ? 0 : 1 });
  if (fit.opposite) seats.push({ switch: member.switch, onMeans: member.flip });
  return seats;
}
