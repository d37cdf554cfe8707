import type { ChainPattern, Taken } from "./chain-problem.js";

/** What is still free on a module, as numbered states: which follows when a circuit takes something (-1: it is not free). */
export interface SlotStates {
  readonly count: number;
  readonly start: number;
  /** By what is taken (`takenCode`), then by state. */
  readonly after: readonly Int16Array[];
}

const TAKEN_CODES = 8;

/** What a circuit takes as a number below 8. */
export const takenCode = (taken: Taken): number =>
  taken.slot ? 4 + Number(taken.dimmable) * 2 + Number(taken.switchable) : 0;

/** Every state that the pattern's options can lead to. More free channels of a mode than free channels in all are as many as those. */
export function slotStatesOf(pattern: ChainPattern): SlotStates {
  const codes = [...new Set(pattern.options.map((option) => takenCode(option.takes)))];
  const numberOf = new Map<string, number>();
  const states: (readonly [slots: number, dimmable: number, switchable: number])[] = [];
  const after = Array.from({ length: TAKEN_CODES }, () => [] as number[]);
  const enter = (slots: number, dimmable: number, switchable: number): number => {
    if (slots < 0 || dimmable < 0 || switchable < 0) return -1;
    const state = [slots, Math.min(slots, dimmable), Math.min(slots, switchable)] as const;
    const key = state.join();
    const known = numberOf.get(key);
    if (known !== undefined) return known;
    numberOf.set(key, states.length);
    return states.push(state) - 1;
  };
  const start = enter(pattern.slots, pattern.dimmable, pattern.switchable);
  for (let at = 0; at < states.length; at++) {
    const [slots, dimmable, switchable] = states[at] as (typeof states)[number];
    for (let code = 0; code < TAKEN_CODES; code++)
      (after[code] as number[])[at] =
        code === 0
          ? at
          : codes.includes(code)
            ? enter(slots - 1, dimmable - ((code >> 1) & 1), switchable - (code & 1))
            : -1;
  }
  return { count: states.length, start, after: after.map((list) => Int16Array.from(list)) };
}
