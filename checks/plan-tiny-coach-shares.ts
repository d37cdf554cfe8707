import type { Job } from "@fusebook/core/record";
import { bankOf, type Draw, exact } from "./plan-tiny-coach-draw.js";

/** What each family of tiny coaches is good for trying. */
export const MOVE_FAMILIES = [
  "within",
  "neighbour",
  "stocked",
  "steady",
  "wired",
  "limited",
  "locked",
  "mixed",
] as const;
export type MoveFamily = (typeof MOVE_FAMILIES)[number];

/** How often each feature is drawn. */
const PLAIN = {
  lamp: 0.75,
  detector: 0.12,
  spare: 0.15,
  unlisted: 0.02,
  move: 0.3,
  reach: 0.3,
  stock: 0.15,
  scarce: 0.05,
  second: 0.05,
  feedable: 0.1,
  tightFuse: 0.1,
  thinWire: 0.3,
  feeder: 0.15,
  bar: 0.1,
  budget: 0.15,
  timed: 0.1,
  lock: 0.05,
  ruledOut: 0.03,
  dead: 0.04,
  dimKind: 0.25,
  unread: 0.15,
  odd: 0,
  pole: 0,
  shared: 0,
};
export type Shares = Readonly<typeof PLAIN>;

/** Where a family differs from the plain shares. */
export const SHARES: Readonly<Record<MoveFamily, Shares>> = {
  within: {
    ...PLAIN,
    move: 0.5,
    reach: 0,
    spare: 0.2,
    feeder: 0,
    bar: 0,
    budget: 0,
    timed: 0,
    detector: 0.4,
    lamp: 0.7,
  },
  neighbour: { ...PLAIN, move: 0.4, reach: 1, spare: 0.2, feeder: 0, bar: 0, dimKind: 0.4, unread: 0.4, detector: 0.3 },
  stocked: { ...PLAIN, stock: 0.7, scarce: 0.4, dimKind: 0.6, move: 0.2, lamp: 0.9, dead: 0.08 },
  steady: { ...PLAIN, thinWire: 1, second: 0.6, feedable: 0.75, lamp: 0.6, move: 0.15 },
  wired: { ...PLAIN, tightFuse: 0.9, thinWire: 0.9, lamp: 0.95, move: 0.25, reach: 0.5, budget: 0.05 },
  limited: { ...PLAIN, feeder: 0.7, bar: 0.5, budget: 0.5, timed: 0.5, reach: 0.9, move: 0.4, lamp: 0.85, spare: 0.25 },
  locked: { ...PLAIN, lock: 1, ruledOut: 0.6, move: 0.5, reach: 0.5, second: 0.2, feedable: 0.5, thinWire: 0.8 },
  mixed: {
    ...PLAIN,
    odd: 0.15,
    pole: 0.6,
    shared: 0.6,
    unlisted: 0.05,
    reach: 0.6,
    move: 0.4,
    second: 0.2,
    feedable: 0.4,
  },
};

/** Three kinds: a relay module, one that dims by halves, and one of several others. */
export function kindsOf(draw: Draw, share: Shares, family: MoveFamily): Record<string, unknown>[] {
  const { pick, is } = { pick: draw.pick.bind(draw), is: draw.is.bind(draw) };
  const isWired = family === "wired";
  const common = () => ({
    ratedSwitchedA: exact(pick(6, 8, 10)),
    ratedTotalA: exact(isWired ? pick(20, 30) : pick(10, 16, 30)),
    maxFuseA: exact(is(share.tightFuse) ? pick(7.5, 10) : 15),
    price: pick(90, 150, 220, 300),
    installMin: pick(20, 30, 40),
    ...(is(share.stock) ? { inStock: pick(1, 1, 2) } : {}),
    ...(is(share.scarce) ? { isObtainable: false } : {}),
  });
  const dims = (id: string, channels: number, blocks: number[][], bank?: unknown) => ({
    id,
    name: id,
    channels,
    output: "pwm",
    ...common(),
    ...(is(share.odd * 0.2) ? {} : { ratedDimmedA: exact(isWired ? pick(6, 8) : pick(3, 4, 6)) }),
    ...(bank === undefined ? {} : { bank }),
    dimBlocks: blocks.map((each, i) => ({ id: `b${i + 1}`, channels: each })),
  });
  const relay = {
    id: "R4",
    name: "R4",
    channels: 4,
    output: "relay",
    ratedSwitchedA: exact(10),
    ratedTotalA: exact(30),
    maxFuseA: exact(15),
    price: 60,
    installMin: 20,
    ...(is(share.stock * 0.4) ? { inStock: 1 } : {}),
    ...(is(share.pole) ? { side: "high" } : {}),
  };
  const halves = {
    ...(is(0.15) ? { fitsInPlaceOf: pick(["B4"], ["C6"]) } : {}),
    ...dims(
      "A4",
      4,
      [
        [1, 2],
        [3, 4],
      ],
      bankOf(is(0.5) ? [[], ["b1"], ["b2"], ["b1", "b2"]] : [[], ["b2"]]),
    ),
  };
  const more = is(0.35)
    ? dims("B4", 4, [[1, 2, 3, 4]], bankOf([[], ["b1"]]))
    : is(0.55)
      ? {
          ...dims(
            "C6",
            6,
            [
              [1, 2, 3],
              [4, 5, 6],
            ],
            bankOf([["b1"], ["b2"]]),
          ),
          ...(is(0.5) ? { fitsInPlaceOf: ["R4"] } : {}),
        }
      : // Each channel by itself; the sheet lists no settings; one channel more than the harness, that only switches.
        dims("E5", 5, [[1], [2], [3], [4]].slice(0, pick(2, 3, 4)));
  const side = () => (is(share.pole * 0.8) ? { side: pick("high", "low", "low") } : {});
  return [relay, { ...halves, ...side() }, { ...more, ...side() }];
}

export interface Drawn {
  readonly modules: readonly Record<string, unknown>[];
  readonly circuits: readonly Record<string, unknown>[];
  readonly loads: readonly Record<string, unknown>[];
  readonly movable: readonly string[];
  readonly kindIds: readonly string[];
}

/** Limits, locks and choices of the job. */
export function jobOf(draw: Draw, share: Shares, drawn: Drawn): Job {
  const pick = draw.pick.bind(draw);
  const is = draw.is.bind(draw);
  const { modules, circuits, loads, movable, kindIds } = drawn;
  const fixed: Record<string, unknown>[] = [];
  const unlocked = modules.filter((module) => module.isLocked !== true);
  const [first, second] = [pick(...unlocked, ...modules).id, pick(...unlocked, ...modules).id];
  if (is(share.lock * 0.35))
    fixed.push({ module: first, kind: pick(...kindIds), ...(is(0.5) ? { isForbidden: true } : {}) });
  if (is(share.lock * 0.25) && first !== second)
    fixed.push({
      module: second,
      kind: "A4",
      enables: pick<string[]>(["b2"], []),
      ...(is(0.7) ? { isForbidden: true } : {}),
    });
  const going = movable.length > 0 ? pick(...movable) : undefined;
  if (going !== undefined && is(share.lock * 0.35))
    fixed.push({ circuit: going, toModule: pick(...modules).id, ...(is(0.6) ? { isForbidden: true } : {}) });
  const dimmed = pick(
    ...circuits.filter((each) => each.isSpare !== true && each.module !== undefined),
    circuits[0]!,
  ).id;
  if (is(share.lock * 0.3) && dimmed !== going) fixed.push({ circuit: dimmed, isDimmed: is(0.4) });
  const isNamed = (id: unknown): boolean =>
    fixed.some((choice) => choice.module === id || choice.circuit === id || choice.toModule === id);
  const free = (ids: readonly string[]): string[] => ids.filter((id) => !isNamed(id));
  const lockable = free(modules.map((module) => module.id as string));
  const stay = free(movable);
  const kept = loads.filter(
    (load) =>
      !circuits.some((each) => isNamed(each.id) && (each.loads as string[] | undefined)?.includes(load.id as string)),
  );
  const barred = kindIds.filter((id) => !fixed.some((choice) => choice.kind === id));
  return {
    id: "j1",
    title: "dim",
    constraints: {
      ...(is(share.budget) ? { budget: pick(120, 200, 300, 420.5) } : {}),
      ...(is(share.timed) ? { maxMinutes: pick(30, 45, 60, 80, 100) } : {}),
      ...(barred.length > 0 && is(0.08 + share.lock * 0.4) ? { forbiddenKinds: [pick(...barred)] } : {}),
      ...(lockable.length > 0 && is(share.lock * 0.25) ? { lockedModules: [pick(...lockable)] } : {}),
      ...(stay.length > 0 && is(share.lock * 0.4) ? { lockedCircuits: [pick(...stay)] } : {}),
      ...(kept.length > 0 && is(share.lock * 0.4) ? { lockedLoads: [pick(...kept).id] } : {}),
      ...(is(share.ruledOut) ? { rulesOut: [pick("moves", "moves", "steady-feeds", "reuse")] } : {}),
      ...(fixed.length > 0 ? { fixedChoices: fixed } : {}),
    },
  } as unknown as Job;
}
