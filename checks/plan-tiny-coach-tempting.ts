import { type Job, readRecord } from "@fusebook/core/record";
import { bankOf, Draw, exact, type TinyMoves } from "./plan-tiny-coach-draw.js";

/**
 * One rule stands between a lamp and its dimmer on each of these coaches: without it, moving the load beside the lamp off the block, or fitting the kind
 * that dims, would do.
 */
export const TEMPTATIONS = [
  "detector",
  "fixed-program",
  "shared-channel",
  "ruled-out",
  "locked-circuit",
  "locked-load",
  "may-not-move",
  "unread-setting",
  "other-pole",
  "feeder",
  "bar",
  "locked-module",
  "reach",
  "unknown-load",
  "not-to-be-had",
  "fixed-choice",
  "ruled-out-kind",
  "feed-draw",
] as const;
type Temptation = (typeof TEMPTATIONS)[number];

/** Where the load beside the lamp would go: to a spare channel of its own module, to one of the other module, or nowhere. */
const WAY: Readonly<Record<Temptation, "home" | "away" | "none">> = {
  detector: "home",
  "fixed-program": "home",
  "shared-channel": "home",
  "ruled-out": "home",
  "locked-circuit": "home",
  "locked-load": "home",
  "may-not-move": "home",
  "unread-setting": "away",
  "other-pole": "away",
  feeder: "away",
  bar: "away",
  "locked-module": "away",
  reach: "away",
  "unknown-load": "none",
  "not-to-be-had": "none",
  "fixed-choice": "none",
  "ruled-out-kind": "none",
  "feed-draw": "none",
};

const LAMPS = ["led-resistor", "led-linear", "filament"];

function kindsOf(draw: Draw, temptation: Temptation): Record<string, unknown>[] {
  const relay = (id: string, price: number, side: string | undefined) => ({
    id,
    name: id,
    channels: 4,
    output: "relay",
    ratedSwitchedA: exact(10),
    ratedTotalA: exact(30),
    maxFuseA: exact(15),
    price,
    installMin: 20,
    ...(side === undefined ? {} : { side }),
  });
  const hasPoles = temptation === "other-pole";
  return [
    relay("R4", 60, hasPoles ? "high" : undefined),
    {
      id: "A4",
      name: "A4",
      channels: 4,
      output: "pwm",
      ratedSwitchedA: exact(draw.pick(8, 10)),
      ratedDimmedA: exact(draw.pick(4, 6)),
      ratedTotalA: exact(draw.pick(20, 30)),
      maxFuseA: exact(15),
      price: draw.pick(90, 150, 220),
      installMin: draw.pick(20, 30),
      ...(temptation === "not-to-be-had" ? { isObtainable: false } : {}),
      bank: bankOf([[], ["b1"], ["b2"], ["b1", "b2"]]),
      dimBlocks: [
        { id: "b1", channels: [1, 2] },
        { id: "b2", channels: [3, 4] },
      ],
    },
    ...(hasPoles ? [relay("Z4", 70, "low")] : []),
  ];
}

/** Two modules of four channels: the lamp and the load beside it on one block of the first, what it takes for that load to go elsewhere, and one rule against it. */
export function temptingCoach(seed: number): TinyMoves {
  const draw = new Draw(seed * 4241 + 7);
  const pick = draw.pick.bind(draw);
  const is = draw.is.bind(draw);
  const temptation = TEMPTATIONS[seed % TEMPTATIONS.length] as Temptation;
  const way = WAY[temptation];
  const isUnread = temptation === "unread-setting";
  const loads: Record<string, unknown>[] = [];
  const load = (classOf: string | undefined, wish?: string, currentA = pick(1, 2)): string => {
    const id = `l${loads.length + 1}`;
    loads.push({
      id,
      name: id,
      currentA: exact(currentA),
      ...(classOf === undefined ? {} : { class: classOf }),
      ...(wish === undefined ? {} : { wish, wishWeight: pick(1, 2, 3) }),
    });
    return id;
  };
  const steady = (): string => load(pick("fan", "pump"));
  const lamp = (wish?: string): string => load(pick(...LAMPS), wish);
  const besideClass =
    temptation === "detector"
      ? "detector"
      : temptation === "unknown-load"
        ? undefined
        : way === "none"
          ? "led-linear"
          : "electronics";
  const beside = load(besideClass, undefined, pick(1, 2));
  const at = (module: string, channel: number, id: string | undefined): Record<string, unknown> => ({
    id: `c-${module}.${channel}`,
    module,
    channel,
    ...(id === undefined ? { isSpare: true } : { loads: [id], fuse: { ratedA: exact(pick(10, 15)) } }),
  });
  // The load beside may be fed apart; then a lamp of the other module would find its channel free, but not the feeder.
  const isFed = temptation === "feed-draw";
  if (isFed) Object.assign(loads[0]!, { class: "electronics", maySteadyFeed: true, currentA: exact(2) });
  const circuits = [
    {
      ...at("m1", 1, beside),
      ...(isFed ? { out: { gauge: "14 AWG", lengthM: exact(2) } } : {}),
      ...(temptation === "may-not-move" || isFed ? {} : { canMove: true }),
      ...(temptation === "may-not-move" || (way === "away" && temptation !== "reach") ? { reach: ["m2"] } : {}),
    },
    at("m1", 2, lamp(pick("must-dim", "nice-to-dim"))),
    at("m1", 3, way === "home" ? undefined : steady()),
    at("m1", 4, steady()),
    at("m2", 1, way === "away" ? undefined : steady()),
    {
      ...at("m2", 2, lamp(isUnread ? undefined : pick("nice-to-dim", isFed ? "nice-to-dim" : undefined))),
      ...(isFed ? { canMove: true, reach: ["m1"] } : {}),
    },
    at("m2", 3, steady()),
    at("m2", 4, isUnread || is(0.5) ? steady() : lamp("must-stay-steady")),
  ];
  if (temptation === "shared-channel") circuits.push({ ...at("m1", 1, lamp()), id: "c-shared" });
  const secondKind = isUnread ? "A4" : temptation === "other-pole" ? "Z4" : "R4";
  const tight = exact(pick(1, 2));
  const read = readRecord({
    format: "fusebook/1",
    id: `tempting-${seed}`,
    coach: { name: "tiny", isInvented: true },
    policy: { labourRatePerHour: isUnread ? 60 : pick(0, 60, 85) },
    places: [{ id: "bay", name: "bay", accessMin: pick(0, 5) }],
    supplies: [{ id: "s1", kind: "battery", name: "bank", node: "bat" }],
    nodes: [
      { id: "bat", kind: "stud", name: "bank", rail: "positive" },
      { id: "bus", kind: "busbar", name: "bus", rail: "positive" },
      { id: "f1", kind: "stud", name: "feed 1", rail: "positive" },
      { id: "f2", kind: "stud", name: "feed 2", rail: "positive", ...(temptation === "bar" ? { ratedA: tight } : {}) },
    ],
    cables: [
      { id: "w0", from: "bat", to: "bus", gauge: "2 AWG" },
      { id: "w1", from: "bus", to: "f1", gauge: "6 AWG", ...(isFed ? { protection: { ratedA: tight } } : {}) },
      {
        id: "w2",
        from: "bus",
        to: "f2",
        gauge: "6 AWG",
        ...(temptation === "feeder" ? { protection: { ratedA: tight } } : {}),
      },
    ],
    moduleKinds: kindsOf(draw, temptation),
    modules: [
      { id: "m1", kind: "R4", address: 1, feedNode: "f1", place: "bay" },
      {
        id: "m2",
        kind: secondKind,
        address: 2,
        feedNode: "f2",
        ...(temptation === "locked-module" ? { isLocked: true } : {}),
      },
    ],
    circuits,
    loads,
    ...(temptation === "fixed-program"
      ? { controls: [{ id: "k1", name: "k1", program: "fixed", does: [{ action: "switch", circuits: ["c-m1.1"] }] }] }
      : {}),
  });
  if (read.kind === "refused")
    throw new Error(read.faults.map((fault) => `${fault.path}: ${fault.message}`).join("\n"));
  const constraints = {
    ...(temptation === "ruled-out" ? { rulesOut: ["moves"] } : isUnread ? { rulesOut: ["reuse"] } : {}),
    ...(temptation === "locked-circuit" ? { lockedCircuits: ["c-m1.1"] } : {}),
    ...(temptation === "locked-load" ? { lockedLoads: [beside] } : {}),
    ...(temptation === "fixed-choice" ? { fixedChoices: [{ module: "m1", kind: "A4", isForbidden: true }] } : {}),
    // The other module must do without a kind that dims.
    ...(isFed ? { fixedChoices: [{ module: "m2", kind: "R4" }] } : {}),
    ...(temptation === "ruled-out-kind" ? { forbiddenKinds: ["A4"] } : {}),
  };
  return { record: read.record, job: { id: "j1", title: "dim", constraints } as unknown as Job };
}
