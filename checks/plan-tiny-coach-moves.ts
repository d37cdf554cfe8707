import { readRecord } from "@fusebook/core/record";
import { Draw, exact, type TinyMoves } from "./plan-tiny-coach-draw.js";
import { jobOf, kindsOf, MOVE_FAMILIES, type MoveFamily, SHARES } from "./plan-tiny-coach-shares.js";

export { MOVE_FAMILIES, type MoveFamily } from "./plan-tiny-coach-shares.js";

/** A coach small enough that every plan can be listed: up to three modules, three kinds, at most twelve loads, a handful of circuits that may move. */
export function tinyMoves(seed: number, family: MoveFamily): TinyMoves {
  const draw = new Draw(seed * 7919 + 31 + MOVE_FAMILIES.indexOf(family) * 5_000_011);
  const pick = draw.pick.bind(draw);
  const is = draw.is.bind(draw);
  const share = SHARES[family];
  const count = family === "within" ? pick(1, 2) : pick(2, 2, 3);
  const moduleKinds = kindsOf(draw, share, family);
  const kindIds = moduleKinds.map((kind) => kind.id as string);
  const modules: Record<string, unknown>[] = [];
  const circuits: Record<string, unknown>[] = [];
  const loads: Record<string, unknown>[] = [];
  let movers = 0;
  const amps = () =>
    exact(
      pick(
        ...(family === "wired" ? [1, 2, 6, 6, 7] : family === "limited" ? [1, 2, 3, 4, 5, 7] : [1, 1, 2, 2, 3, 5, 7]),
      ),
    );
  const addLoad = (isLamp: boolean, isMixedIn = false): string | undefined => {
    if (loads.length >= 12) return undefined;
    const id = `l${loads.length + 1}`;
    const isDetector = !isLamp && is(share.detector);
    loads.push({
      id,
      name: id,
      ...(is(share.odd)
        ? {}
        : {
            class: isLamp
              ? pick(
                  "led-resistor",
                  "led-linear",
                  "filament",
                  "led-resistor",
                  is(share.odd) ? "led-driver" : "filament",
                )
              : isDetector
                ? "detector"
                : pick("fan", "electronics", "pump"),
          }),
      ...(is(share.odd * 0.7) ? {} : { currentA: amps() }),
      ...(is(0.2) ? { isContinuous: true } : {}),
      ...(is(0.06) ? { maxFuseA: exact(pick(5, 7.5)) } : {}),
      ...(isLamp && is(0.8)
        ? {
            wish: pick("must-dim", "nice-to-dim", "nice-to-dim", "nice-to-dim", "must-stay-steady"),
            wishWeight: pick(1, 2, 3),
          }
        : {}),
      ...(!isLamp || isMixedIn || is(0.1)
        ? is(share.feedable)
          ? is(0.75)
            ? { maySteadyFeed: true }
            : { hasOwnSwitch: true, ownSwitchKind: "contact" }
          : is(0.3)
            ? { maySteadyFeed: false, ...(isLamp ? {} : { hasOwnSwitch: true, ownSwitchKind: "contact" }) }
            : {}
        : {}),
    });
    return id;
  };
  for (let m = 1; m <= count; m++) {
    const kind = is(share.dimKind) ? pick(...kindIds.slice(1)) : "R4";
    const channels = moduleKinds.find((each) => each.id === kind)?.channels as number;
    modules.push({
      id: `m${m}`,
      kind,
      address: m,
      feedNode: `f${m}`,
      ...(is(0.9) ? { place: pick("bay", "panel", "bed") } : {}),
      ...(kind !== "R4" && !is(share.unread) ? { positionsFound: `00${pick("00", "10", "01", "11")}` } : {}),
      ...(is(share.dead) ? { isDead: true } : {}),
      ...(is(share.lock * 0.25) ? { isLocked: true } : {}),
    });
    for (let channel = 1; channel <= channels; channel++) {
      if (is(share.unlisted)) continue;
      const id = `c${m}.${channel}`;
      const load = is(share.spare + (channel > 4 ? 0.5 : 0)) ? undefined : addLoad(is(share.lamp));
      if (load === undefined) {
        circuits.push({ id, module: `m${m}`, channel, isSpare: true });
        continue;
      }
      const second = is(share.second) ? addLoad(is(0.25), true) : undefined;
      // A few may move; a few look as if they might: their program is fixed, a detector hangs on them, nobody said that they can.
      const canMove = movers < 4 && is(share.move);
      if (canMove) movers++;
      const others = modules.length > 1 || count > 1 ? [1, 2, 3].filter((other) => other !== m && other <= count) : [];
      const reach = others.filter(() => is(share.reach)).map((other) => `m${other}`);
      circuits.push({
        id,
        module: `m${m}`,
        channel,
        loads: [load, ...(second === undefined ? [] : [second])],
        ...(is(0.85) ? { fuse: { ratedA: exact(is(0.7) ? 15 : pick(7.5, 10)) } } : {}),
        ...(canMove ? { canMove: true } : {}),
        ...(reach.length > 0 && (canMove || is(0.08)) ? { reach } : {}),
        ...(is(share.thinWire)
          ? {
              out: {
                gauge: pick("18 AWG", family === "wired" ? "18 AWG" : "16 AWG", "14 AWG"),
                ...(is(0.9) ? { lengthM: exact(pick(1, 2, 4)) } : {}),
              },
            }
          : {}),
      });
    }
  }
  // One channel that two circuits share, now and then.
  const beside = circuits.find((circuit) => circuit.isSpare !== true && (circuit.loads as string[]).length === 1);
  if (beside !== undefined && is(share.shared)) {
    const load = addLoad(is(0.6));
    for (const id of [...(beside.loads as string[]), load])
      Object.assign(loads.find((each) => each.id === id) ?? {}, { maySteadyFeed: false });
    if (load !== undefined)
      circuits.push({ id: "c-shared", module: beside.module, channel: beside.channel, loads: [load], canMove: true });
  }
  // A plain fuse beside the modules, on a bar or on a module's feed node.
  if (is(share.bar)) {
    const load = addLoad(false);
    if (load !== undefined)
      circuits.push({ id: "c-plain", fusePosition: { name: "plain", node: pick("bus", "f1") }, loads: [load] });
  }
  const movable = circuits.filter((circuit) => circuit.canMove === true).map((circuit) => circuit.id as string);
  const controls = [
    ...(movable.length > 1 && is(0.35)
      ? [{ id: "k1", name: "k1", program: "fixed", does: [{ action: "switch", circuits: [pick(...movable)] }] }]
      : []),
    ...(movable.length > 0 && is(0.15)
      ? [{ id: "k2", name: "k2", program: "editable", does: [{ action: "switch", circuits: [pick(...movable)] }] }]
      : []),
  ];
  const hasBar = is(share.bar);
  const record = {
    format: "fusebook/1",
    id: `tiny-moves-${seed}`,
    coach: { name: "tiny", isInvented: true },
    policy: {
      labourRatePerHour: pick(0, 60, 85, 110),
      ...(is(0.3) ? { moveWithinMin: pick(5, 20), moveBetweenMin: pick(30, 60) } : {}),
      ...(is(0.3) ? { bankSettingMin: pick(5, 12), fuseChangeMin: pick(1, 4) } : {}),
      ...(is(0.5) ? { steadyFeedMin: pick(20, 60), steadyFeedParts: pick(8, 12) } : {}),
      ...(is(0.5) ? { rewireBaseMin: pick(15, 30), rewireMinPerM: pick(3, 5), rewirePartsPerM: pick(1, 2) } : {}),
    },
    places: [
      { id: "bay", name: "bay", accessMin: pick(0, 5, 12.5) },
      { id: "panel", name: "panel", within: "bay", accessMin: pick(3, 8) },
      { id: "bed", name: "under the bed", accessMin: pick(10, 30) },
    ],
    supplies: [
      {
        id: "s1",
        kind: "battery",
        name: "bank",
        node: "bat",
        ...(is(0.5) ? { isolation: { what: "switch", place: pick("bay", "panel") } } : {}),
      },
    ],
    nodes: [
      { id: "bat", kind: "stud", name: "bank", rail: "positive" },
      {
        id: "bus",
        kind: "busbar",
        name: "bus",
        rail: "positive",
        ...(hasBar ? { ratedA: exact(pick(10, 14, 18, 24)) } : {}),
      },
      ...modules.map((_, i) => ({
        id: `f${i + 1}`,
        kind: "stud",
        name: `feed ${i + 1}`,
        rail: "positive",
        ...(is(share.bar) ? { ratedA: exact(pick(6, 8, 10, 12)) } : {}),
      })),
    ],
    cables: [
      { id: "w0", from: "bat", to: "bus", gauge: "2 AWG" },
      ...modules.map((_, i) => ({
        id: `w${i + 1}`,
        from: "bus",
        to: `f${i + 1}`,
        gauge: "6 AWG",
        ...(is(share.feeder) ? { protection: { ratedA: exact(pick(6, 8, 10, 15)) } } : {}),
      })),
    ],
    moduleKinds,
    modules,
    circuits,
    loads,
    ...(controls.length > 0 ? { controls } : {}),
  };
  const read = readRecord(record);
  if (read.kind === "refused")
    throw new Error(read.faults.map((fault) => `${fault.path}: ${fault.message}`).join("\n"));
  return { record: read.record, job: jobOf(draw, share, { modules, circuits, loads, movable, kindIds }) };
}
