import { type CoachNetwork, conductorCOf, type DropPlace } from "../network/index.js";
import { figureValue, known, missing, type Outcome, refused, type Span } from "../quantity/index.js";
import type { Cable, CoachIndex, FullPolicy, Fuse, WireRun } from "../record/index.js";
import { resistanceRatio } from "../tables/index.js";
import { faultCoachOf } from "./fault-coach.js";
import { type FaultSource, faultSourceOf, shortCurrent } from "./fault-source.js";
import { type Withstand, withstandOf } from "./withstand-of.js";

/** One resistance that a fault current meets. */
export interface FaultPart {
  readonly place: DropPlace | "battery";
  /** The record object it belongs to. */
  readonly id: string;
  readonly ohm: number;
  readonly span: Span;
}

/** A conductor in the way of the fault current. */
export interface FaultConductor {
  readonly part: "feeder" | "wire" | "tail" | "return";
  /** The circuit, load or cable it belongs to. */
  readonly id: string;
  /** Path of the run or cable in the record. */
  readonly path: string;
  readonly withstand: Outcome<Withstand>;
}

/** A dead short at one end of the circuit. */
export interface FaultEnd {
  /** At the end of the circuit's own run, or of the own wire of this load. */
  readonly at: "run" | "tail";
  readonly loadId?: string;
  readonly currentA: number;
  readonly span: Span;
  readonly ohm: number;
  readonly conductors: readonly FaultConductor[];
}

/** A device that the fault current passes on its way, nearest the battery first. */
export interface DeviceAbove {
  readonly cable: Cable;
  readonly fuse: Fuse;
  readonly path: string;
}

export interface FarFault {
  readonly circuitId: string;
  /** At the far end of the run. */
  readonly currentA: number;
  readonly span: Span;
  /** All that limits it, in the order the current meets them. In a loop of cables the parts name one way round only. */
  readonly parts: readonly FaultPart[];
  readonly ohm: number;
  readonly emfV: number;
  /** Everything before the circuit's own fuse and after its return: what stands behind the fault. */
  readonly source: FaultSource;
  /** The circuit's own resistance, out and back. */
  readonly ownOhm: number;
  readonly ownSpan: Span;
  readonly conductors: readonly FaultConductor[];
  /** The end of the run first, then of every load's own wire. */
  readonly ends: readonly FaultEnd[];
  readonly above: readonly DeviceAbove[];
}

type Wiring = CoachNetwork["circuits"][number];
type Way = Wiring["out"];

const ohmOf = (ways: readonly Way[]): number => ways.reduce((sum, way) => sum + (way?.ohm ?? 0), 0);
const spanOfWays = (ways: readonly Way[]): Span => ({
  lo: ways.reduce((sum, way) => sum + (way?.span.lo ?? 0), 0),
  hi: ways.reduce((sum, way) => sum + (way?.span.hi ?? 0), 0),
});

const piecesOf = (way: Way): FaultPart[] =>
  (way?.pieces ?? []).map(({ place, id, ohm, span }) => ({ place, id, ohm, span }));

/** Where the class of insulation is not on record, the temperature that a loaded wire is taken to reach. */
const UNKNOWN_CLASS_C = 105;

/** What the wires of this way measure more at the temperature of their class than at that of the air. */
function warmOhm(
  way: Way,
  run: WireRun | undefined,
  policy: FullPolicy,
  zoneOf: (place: string) => string | undefined,
): number {
  if (run === undefined) return 0;
  const ambientC = conductorCOf(run, policy, zoneOf);
  const classC = run.insulationC === undefined ? UNKNOWN_CLASS_C : figureValue(run.insulationC);
  const wires = (way?.pieces ?? []).filter(({ place }) => place === "wire" || place === "return" || place === "tail");
  return (
    wires.reduce((sum, { span }) => sum + span.hi, 0) * (resistanceRatio(ambientC, Math.max(ambientC, classC)) - 1)
  );
}

/** Cables on the way, nearest the battery first on the way out, last on the way back. */
function cablesTo(coach: CoachNetwork, wiring: Wiring, isBack: boolean): CoachNetwork["cables"][number][] {
  const { supply } = wiring;
  if (supply === undefined) return [];
  const steps = isBack ? supply.toReturns.wayTo(wiring.returnNode).reverse() : supply.toFeeds.wayTo(wiring.feedNode);
  return steps.map(({ edge }) => coach.cableOfEdge[edge]!);
}

function batteryPart(coach: CoachNetwork, wiring: Wiring): FaultPart[] {
  const { supply } = wiring;
  if (supply === undefined || supply.branch < 0) return [];
  const ohm = coach.network.branches[supply.branch]!.resistanceOhm;
  return [{ place: "battery", id: supply.supply.id, ohm, span: coach.ohmSpan[supply.branch]! }];
}

/**
 * How large is the current into a dead short at the far end of this circuit, and through what does it run? Limited by battery, cables, channel, fuse,
 * wire and return; nothing else on. At least on batteries alone, at most with every other supply giving all it can. Each conductor comes with what it
 * stands (`withstandOf`); the short at the end of each load's own wire is told too. Missing names the fields of the way; refused: `no-such-circuit`,
 * `spare`, `cut-off`, `not-fed`.
 */
export function faultAtFarEnd(index: CoachIndex, circuitId: string): Outcome<FarFault> {
  const circuit = index.circuits.get(circuitId as never);
  if (circuit === undefined) return refused("no-such-circuit", `the record has no circuit ${circuitId}`);
  if (circuit.isSpare === true) return refused("spare", `${circuitId} is a spare: nothing hangs on it`);
  const built = faultCoachOf(index, circuitId);
  if (built.kind !== "known") return built;
  const coach = built.value;
  const wiring = coach.circuits.find((one) => one.circuit.id === circuit.id)!;
  if (wiring.wayNeeds.length > 0) return missing(...wiring.wayNeeds);
  if (wiring.isCutOff) return refused("cut-off", "no closed way leads from a battery to this circuit and back");
  const source = faultSourceOf(coach, wiring.feedNode, wiring.returnNode);
  if (source.kind !== "known") return source;
  const own = [wiring.entry, wiring.out, wiring.back];
  const zoneOf = (place: string) => index.places.get(place)?.zone;
  const conductor = (part: FaultConductor["part"], id: string, path: string, run: WireRun | Cable) => ({
    part,
    id,
    path,
    withstand: withstandOf(run, coach.policy, `${path}.`, zoneOf),
  });
  const out = cablesTo(coach, wiring, false);
  const back = cablesTo(coach, wiring, true);
  const ofCable = (part: "feeder" | "return") => (each: (typeof out)[number]) =>
    (each.cable.kind ?? "wire") === "wire" ? [conductor(part, each.cable.id, each.path, each.cable)] : [];
  const conductors: FaultConductor[] = [
    ...out.flatMap(ofCable("feeder")),
    ...(circuit.out === undefined ? [] : [conductor("wire", circuit.id, `${wiring.path}.out`, circuit.out)]),
    ...(circuit.return === undefined ? [] : [conductor("return", circuit.id, `${wiring.path}.return`, circuit.return)]),
    ...back.flatMap(ofCable("return")),
  ];
  const endWith = (tail: Way, tailRun?: WireRun): { currentA: number; span: Span; ohm: number } => {
    const ways = [...own, tail];
    const cold = spanOfWays(ways);
    // A wire that was loaded before the fault is warmer and measures more: at the least, each at the temperature of its class.
    const hotter = (way: Way, run: WireRun | undefined) => warmOhm(way, run, coach.policy, zoneOf);
    const warmed = hotter(wiring.out, circuit.out) + hotter(wiring.back, circuit.return) + hotter(tail, tailRun);
    const { value, span } = shortCurrent(source.value, ohmOf(ways), { lo: cold.lo, hi: cold.hi + warmed });
    return { currentA: value, span, ohm: source.value.ohm + ohmOf(ways) };
  };
  const run = endWith(undefined);
  const ends: FaultEnd[] = [{ at: "run", ...run, conductors }];
  for (const each of wiring.loads) {
    if (each.load.tail === undefined || each.tail === undefined) continue;
    const tail = conductor("tail", each.load.id, `${each.path}.tail`, each.load.tail);
    ends.push({
      at: "tail",
      loadId: each.load.id,
      ...endWith(each.tail, each.load.tail),
      conductors: [...conductors, tail],
    });
  }
  const backParts = [...piecesOf(wiring.back), ...back.flatMap((each) => piecesOf(each.series))];
  return known({
    circuitId,
    ...run,
    parts: [
      ...batteryPart(coach, wiring),
      ...out.flatMap((each) => piecesOf(each.series)),
      ...piecesOf(wiring.entry),
      ...piecesOf(wiring.out),
      ...backParts.map((part) => (part.place === "feeder" ? { ...part, place: "return" as const } : part)),
    ],
    emfV: source.value.emfV,
    source: source.value,
    ownOhm: ohmOf(own),
    ownSpan: spanOfWays(own),
    conductors,
    ends,
    above: out.flatMap(({ cable, path }) =>
      cable.protection === undefined ? [] : [{ cable, fuse: cable.protection, path: `${path}.protection` }],
    ),
  });
}
