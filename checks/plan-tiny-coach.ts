import { type CoachRecord, type Job, readRecord } from "@fusebook/core/record";

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

const exact = (value: number) => ({ value, basis: "measured", plusMinus: 0 });

/** Switch 3 and 4 of the bank enable blocks one and two. */
const setting = (...enables: string[]) => ({
  enables,
  set: [
    { switch: 3, position: enables.includes("b1") ? 1 : 0 },
    { switch: 4, position: enables.includes("b2") ? 1 : 0 },
  ],
});
const addressCode = {
  kind: "weights",
  coding: "binary",
  firstAddress: 1,
  switches: [
    { switch: 1, weight: 2, onMeans: 0 },
    { switch: 2, weight: 1, onMeans: 1 },
  ],
};

/** What a family of tiny coaches is good for trying: a bit of everything, parts in stock, limits on minutes, fuses over the channel's limit. */
export const FAMILIES = ["mixed", "stocked", "timed", "fused"] as const;
export type Family = (typeof FAMILIES)[number];

/** Shares of: kinds in stock, lamps among loads, spare channels, channels not in the record, jobs with a limit on minutes, circuits with a fuse. */
const SHARES: Readonly<
  Record<Family, Readonly<Record<"stock" | "lamp" | "spare" | "unlisted" | "timed" | "fuse", number>>>
> = {
  mixed: { stock: 0.3, lamp: 0.78, spare: 0.12, unlisted: 0.06, timed: 0.2, fuse: 0.7 },
  stocked: { stock: 0.9, lamp: 0.97, spare: 0.1, unlisted: 0, timed: 0, fuse: 0 },
  timed: { stock: 0.1, lamp: 0.97, spare: 0.1, unlisted: 0, timed: 1, fuse: 0 },
  fused: { stock: 0.1, lamp: 0.9, spare: 0.1, unlisted: 0, timed: 0, fuse: 1 },
};

/** A coach small enough that every plan can be listed: up to three modules of four channels, four kinds. */
export function tinyCoach(seed: number, family: Family = "mixed"): { record: CoachRecord; job: Job } {
  const chance = chanceOf(seed * 6151 + 17 + FAMILIES.indexOf(family) * 7_000_003);
  const share = SHARES[family];
  const isMixed = family === "mixed";
  const pick = <T>(...items: T[]): T => items[Math.floor(chance() * items.length)] as T;
  const maybe = (share: number): boolean => chance() < share;
  const dimKind = (id: string, channels: number, blocks: number[][], options: ReturnType<typeof setting>[]) => ({
    id,
    name: id,
    channels,
    output: "pwm",
    ratedSwitchedA: exact(pick(6, 8, 10)),
    ratedDimmedA: exact(pick(3, 5, family === "mixed" ? 7 : 9)),
    ratedTotalA: exact(isMixed ? pick(10, 16, 30) : 40),
    maxFuseA: exact(pick(7.5, 10, 15)),
    price: pick(90.5, 150, 219.99, 300),
    installMin: pick(20, 25.5, 40),
    ...(maybe(share.stock) ? { inStock: pick(1, 2) } : {}),
    ...(maybe(0.15) ? { isObtainable: false } : {}),
    bank: { switches: 4, address: addressCode, options },
    dimBlocks: blocks.map((each, i) => ({ id: `b${i + 1}`, channels: each })),
  });
  const moduleKinds = [
    {
      id: "R4",
      name: "R4",
      channels: 4,
      output: "relay",
      ratedSwitchedA: exact(10),
      ratedTotalA: exact(30),
      maxFuseA: exact(15),
      price: 60,
      installMin: 20,
      ...(maybe(0.3) ? { inStock: 1 } : {}),
    },
    dimKind(
      "A4",
      4,
      [
        [1, 2],
        [3, 4],
      ],
      [setting(), setting("b1"), setting("b2"), setting("b1", "b2")],
    ),
    dimKind("B4", 4, [[1, 2, 3, 4]], [setting(), setting("b1")]),
    {
      ...dimKind(
        "C6",
        6,
        [
          [1, 2, 3],
          [4, 5, 6],
        ],
        maybe(0.5) ? [setting(), setting("b1"), setting("b1", "b2")] : [setting("b2"), setting("b1")],
      ),
      ...(maybe(0.5) ? { fitsInPlaceOf: ["R4"] } : {}),
    },
  ];
  const places = [
    { id: "bay", name: "bay", accessMin: pick(0, 5, 12.5) },
    { id: "panel", name: "panel", within: "bay", accessMin: pick(3, 8) },
    { id: "bed", name: "under the bed", accessMin: pick(10, 30) },
  ];
  const modules: Record<string, unknown>[] = [];
  const circuits: Record<string, unknown>[] = [];
  const loads: Record<string, unknown>[] = [];
  const count = isMixed ? pick(1, 2, 3, 3) : 3;
  for (let m = 1; m <= count; m++) {
    const kind = isMixed ? pick("R4", "R4", "R4", "A4", "B4") : "R4";
    modules.push({
      id: `m${m}`,
      kind,
      address: m,
      ...(maybe(0.9) ? { place: pick("bay", "panel", "bed") } : {}),
      ...(kind === "R4" || maybe(0.2) ? {} : { positionsFound: `00${pick("00", "10")}` }),
      ...(maybe(isMixed ? 0.08 : 0.02) ? { isDead: true } : {}),
      ...(maybe(isMixed ? 0.08 : 0.02) ? { isLocked: true } : {}),
    });
    for (let channel = 1; channel <= 4; channel++) {
      const id = `c${m}.${channel}`;
      if (maybe(share.unlisted)) continue;
      if (maybe(share.spare)) {
        circuits.push({ id, module: `m${m}`, channel, isSpare: true });
        continue;
      }
      const load = `l${m}.${channel}`;
      const isLamp = maybe(share.lamp);
      circuits.push({
        id,
        module: `m${m}`,
        channel,
        loads: [load],
        ...(maybe(share.fuse) ? { fuse: { ratedA: exact(isMixed ? pick(5, 7.5, 10, 15) : 15) } } : {}),
      });
      loads.push({
        id: load,
        name: load,
        ...(maybe(0.96)
          ? { class: isLamp ? pick("led-resistor", "led-linear", "filament") : pick("fan", "detector") }
          : {}),
        ...(maybe(0.93)
          ? { currentA: exact(Math.round(chance() * (isMixed ? 60 : family === "fused" ? 80 : 30)) / 10) }
          : {}),
        ...(maybe(0.3) ? { isContinuous: true } : {}),
        ...(maybe(0.1) ? { maxFuseA: exact(5) } : {}),
        ...(isLamp && maybe(0.75)
          ? { wish: pick("must-dim", "nice-to-dim", "nice-to-dim", "must-stay-steady"), wishWeight: pick(1, 2, 3.5) }
          : {}),
      });
    }
  }
  const read = readRecord({
    format: "fusebook/1",
    id: `tiny-${seed}`,
    coach: { name: "tiny", isInvented: true },
    policy: { labourRatePerHour: pick(0, 85, 110) },
    places,
    ...(maybe(0.6)
      ? {
          supplies: [
            { id: "s1", kind: "battery", name: "bank", isolation: { what: "switch", place: pick("bay", "panel") } },
            { id: "s2", kind: "charger", name: "charger", place: "bed" },
          ].slice(0, pick(1, 2)),
        }
      : {}),
    moduleKinds,
    modules,
    circuits,
    loads,
  });
  if (read.kind === "refused")
    throw new Error(read.faults.map((fault) => `${fault.path}: ${fault.message}`).join("\n"));
  const job = {
    id: "j1",
    title: "dim",
    constraints: {
      ...(maybe(0.25) ? { budget: pick(200, 420.5, 700) } : {}),
      ...(maybe(share.timed) ? { maxMinutes: pick(45, 60, 80, 100, 120) } : {}),
      ...(maybe(0.1) ? { forbiddenKinds: ["A4"] } : {}),
      ...(maybe(0.1) ? { lockedModules: ["m1"] } : {}),
    },
  } as unknown as Job;
  return { record: read.record, job };
}
