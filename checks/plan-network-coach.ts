import { type CoachRecord, type Job, readRecord } from "@fusebook/core/record";

const exact = (value: number) => ({ value, basis: "measured", plusMinus: 0 });

/** A kind of four channels; `onOhm` of one channel while it is on. */
const kind = (id: string, price: number, onOhm: number, dims: boolean) => ({
  id,
  name: id,
  channels: 4,
  output: dims ? "pwm" : "relay",
  ratedSwitchedA: exact(20),
  ...(dims ? { ratedDimmedA: exact(15), pwmHz: exact(2000), dimBlocks: [{ id: "b1", channels: [1, 2] }] } : {}),
  ratedTotalA: exact(60),
  maxFuseA: exact(20),
  onResistanceOhm: exact(onOhm),
  quiescentA: exact(0),
  price,
  installMin: 20,
});

const D4_SET = {
  switches: 1,
  options: [
    { enables: [], set: [{ switch: 1, position: 0 }] },
    { enables: ["b1"], set: [{ switch: 1, position: 1 }] },
  ],
};

interface Load {
  readonly id: string;
  readonly module: string;
  readonly channel: number;
  readonly class: string;
  readonly currentA: number;
  readonly minV?: number;
  readonly wish?: "must-dim" | "nice-to-dim";
  readonly reach?: readonly string[];
  /** Lands on the shared return instead of battery negative. */
  readonly isShared?: boolean;
}

export interface NetworkCoach {
  /** Volts of the battery, 12 where absent. */
  readonly restV?: number;
  readonly kinds: readonly { id: string; price: number; onOhm: number; dims: boolean; isObtainable?: boolean }[];
  readonly modules: readonly { id: string; kind: string; node: string; accessMin: number; isLocked?: boolean }[];
  /** Positive cables from the battery: node it feeds, ohms, device. */
  readonly feeders: readonly { id: string; to: string; ohm: number; deviceA?: number }[];
  /** Ohms of the one cable from the shared return to battery negative. */
  readonly returnOhm?: number;
  readonly loads: readonly Load[];
}

/** A coach whose volts can be worked out by hand: a battery without resistance of its own, wires of the circuits of no resistance, feeders and one shared return as given. */
export function networkCoach(given: NetworkCoach): { record: CoachRecord; job: Job } {
  const nodes = [...new Set(given.feeders.map((feeder) => feeder.to))];
  const read = readRecord({
    format: "fusebook/1",
    id: "by-hand",
    coach: { name: "by hand", isInvented: true, nominalV: 12 },
    policy: { labourRatePerHour: 60, maxDropRatioGeneral: 0.5, maxDropRatioCritical: 0.5, maxDropRatioFeeder: 0.5 },
    places: given.modules.map((module) => ({ id: `p-${module.id}`, name: module.id, accessMin: module.accessMin })),
    supplies: [
      {
        id: "s1",
        kind: "battery",
        name: "House",
        chemistry: "agm",
        capacityAh: exact(400),
        node: "bat",
        returnNode: "neg",
        openCircuitV: exact(given.restV ?? 12),
        internalResistanceOhm: exact(0),
      },
    ],
    nodes: [
      { id: "bat", kind: "terminal", name: "battery +", rail: "positive" },
      { id: "neg", kind: "terminal", name: "battery -", rail: "return" },
      { id: "shared", kind: "ground", name: "shared ground", rail: "return" },
      ...nodes.map((id) => ({ id, kind: "busbar", name: id, rail: "positive" })),
    ],
    cables: [
      { id: "k-return", from: "shared", to: "neg", resistanceOhm: exact(given.returnOhm ?? 0.001) },
      ...given.feeders.map(({ id, to, ohm, deviceA }) => ({
        id,
        from: "bat",
        to,
        resistanceOhm: exact(ohm),
        ...(deviceA === undefined
          ? {}
          : { protection: { ratedA: exact(deviceA), type: "breaker", distanceFromSourceM: exact(0.1) } }),
      })),
    ],
    moduleKinds: given.kinds.map(({ id, price, onOhm, dims, isObtainable }) => ({
      ...kind(id, price, onOhm, dims),
      ...(dims ? { bank: D4_SET } : {}),
      ...(isObtainable === undefined ? {} : { isObtainable }),
    })),
    modules: given.modules.map(({ id, kind, node, isLocked }) => ({
      id,
      kind,
      feedNode: node,
      returnNode: "neg",
      place: `p-${id}`,
      ...(given.kinds.find((each) => each.id === kind)?.dims ? { positionsFound: "1" } : {}),
      ...(isLocked ? { isLocked } : {}),
    })),
    circuits: given.modules.flatMap((module) =>
      [1, 2, 3, 4].map((channel) => {
        const load = given.loads.find((each) => each.module === module.id && each.channel === channel);
        const id = `c-${module.id}.${channel}`;
        if (load === undefined) return { id, module: module.id, channel, isSpare: true, loads: [] };
        return {
          id,
          module: module.id,
          channel,
          loads: [load.id],
          fuse: { resistanceOhm: exact(0) },
          out: { resistanceOhm: exact(0.001) },
          return: { resistanceOhm: exact(0.001), node: load.isShared ? "shared" : "neg" },
          ...(load.reach === undefined ? {} : { canMove: true, reach: load.reach }),
        };
      }),
    ),
    loads: given.loads.map((load) => ({
      id: load.id,
      name: load.id,
      class: load.class,
      ratedV: exact(12),
      currentA: exact(load.currentA),
      ...(load.minV === undefined ? {} : { minV: exact(load.minV) }),
      ...(load.wish === undefined ? {} : { wish: load.wish }),
    })),
  });
  if (read.kind === "refused")
    throw new Error(read.faults.map((fault) => `${fault.path}: ${fault.message}`).join("\n"));
  return {
    record: read.record,
    job: { id: "j1", title: "dim", constraints: { rulesOut: ["reuse"] } } as unknown as Job,
  };
}
