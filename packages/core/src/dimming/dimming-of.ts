import { fitOfLoad, type LampFit, nominalVOf } from "../network/index.js";
import { figureValue, known, missing, type Outcome, refused } from "../quantity/index.js";
import type {
  Circuit,
  CircuitId,
  CoachIndex,
  LoadId,
  Module,
  ModuleId,
  ModuleKind,
  ModuleKindId,
  Wish,
} from "../record/index.js";
import { type DimmedRating, dimmedRating } from "./block-suitability.js";
import { type CircuitFeed, circuitFeed, feedOfDriver } from "./circuit-feed.js";
import { type CircuitSuitability, circuitSuitability, type JudgedLoad } from "./circuit-suitability.js";
import { type DriverPulses, driverPulses, type SpannedFeed } from "./driver-pulses.js";
import { type CircuitAtDuty, dutyCurrents } from "./duty-currents.js";
import { type EvenRamp, evenRamp } from "./even-ramp.js";
import { flickerOfLoad, type LoadFlicker } from "./flicker-of-load.js";
import { lightExponentOf } from "./light-of-duty.js";
import { type LightAtDuty, lightTable } from "./light-table.js";
import { type LowestDuty, lowestUsefulDuty } from "./lowest-duty.js";

/** Everything that is known of dimming one load on a kind of module. */
export interface LoadDimming extends JudgedLoad {
  readonly id: LoadId;
  /** True where somebody guessed the class from its name. */
  readonly isClassGuessed: boolean;
  readonly flicker: Outcome<LoadFlicker>;
  readonly lowest: Outcome<LowestDuty>;
  readonly table: Outcome<readonly LightAtDuty[]>;
  /** What its readings of volts and amps say; undefined where it has none. */
  readonly fit: Outcome<LampFit> | undefined;
}

export interface CircuitDimming {
  readonly circuit: CircuitId;
  readonly path: string;
  readonly module: ModuleId | undefined;
  readonly kind: ModuleKindId | undefined;
  readonly channel: number | undefined;
  /** The kind's block that this channel belongs to; undefined where it has none, and so never dims. */
  readonly block: string | undefined;
  readonly suitability: Omit<CircuitSuitability, "loads">;
  readonly loads: readonly LoadDimming[];
  readonly rating: Outcome<DimmedRating>;
  /** The lowest duty that serves all its lamps. */
  readonly lowestDutyRatio: Outcome<number>;
  readonly currents: Outcome<readonly CircuitAtDuty[]>;
  /** Repeated inrush of its drivers at the lowest duty and at half; undefined where it has none. */
  readonly drivers: Outcome<readonly { readonly dutyRatio: number; readonly pulses: DriverPulses }[]> | undefined;
  readonly ramp: Outcome<EvenRamp>;
}

export interface DimmingOptions {
  /** Judge on this kind instead of the one that is fitted. */
  readonly kind?: ModuleKind | undefined;
  readonly wishes?: ReadonlyMap<string, Wish> | undefined;
  /** Presses from lowest to full; eight where not said. */
  readonly steps?: number | undefined;
  readonly duties?: readonly number[] | undefined;
  /** Only the verdicts: no currents, and drivers only where their capacitors are known. For many circuits at once. */
  readonly isBrief?: boolean | undefined;
}

const DUTIES = [0.1, 0.25, 0.5, 0.75, 1] as const;
const HALF = 0.5;

/** What can be said of dimming this circuit, on the module kind that is fitted or on another? Refused: `no-such-circuit`. */
export function dimmingOf(index: CoachIndex, circuitId: string, options: DimmingOptions = {}): Outcome<CircuitDimming> {
  const circuit = index.circuits.get(circuitId);
  if (circuit === undefined) return refused("no-such-circuit", `the record has no circuit ${circuitId}`);
  const module = circuit.module === undefined ? undefined : index.modules.get(circuit.module);
  const kind = options.kind ?? kindOf(index, module);
  const kindOutcome = kindToDim(index, circuit, module, kind);
  const suitability = circuitSuitability(index, circuit, options.wishes);
  const hasDriver = suitability.loads.some(
    ({ load }) => load.class === "led-driver" && (options.isBrief !== true || load.inputCapacitanceF !== undefined),
  );
  const feed = hasDriver ? circuitFeed(index, circuit) : undefined;
  const loads = suitability.loads.map((each) => loadDimming(index, each, kindOutcome, feed));
  const lowest = lowestOf(loads);
  const standard = [...(lowest.kind === "known" && lowest.value < DUTIES[0] ? [lowest.value] : []), ...DUTIES];
  const duties = options.isBrief ? [] : (options.duties ?? standard);
  const { loads: _, ...judged } = suitability;
  return known({
    circuit: circuit.id,
    path: index.pathOf("circuits", circuit.id),
    module: module?.id,
    kind: kind?.id,
    channel: circuit.channel,
    block: kind?.dimBlocks?.find((each) => circuit.channel !== undefined && each.channels.includes(circuit.channel))
      ?.id,
    suitability: judged,
    loads,
    rating: kindOutcome.kind === "known" ? dimmedRating(index, circuit, kindOutcome.value) : kindOutcome,
    lowestDutyRatio: lowest,
    currents: dutyCurrents(index, circuit, duties),
    drivers: feed === undefined ? undefined : driversOf(index, suitability, kindOutcome, feed, lowest),
    ramp: rampOfCircuit(loads, kindOutcome, lowest, options.steps),
  });
}

const kindOf = (index: CoachIndex, module: Module | undefined): ModuleKind | undefined =>
  module?.kind === undefined ? undefined : index.moduleKinds.get(module.kind);

/** The kind if it can dim; else why there is nothing to say of frequency, ramp or rating. */
function kindToDim(
  index: CoachIndex,
  circuit: Circuit,
  module: Module | undefined,
  kind: ModuleKind | undefined,
): Outcome<ModuleKind> {
  if (kind === undefined) {
    if (circuit.module === undefined) return refused("not-on-module", "it hangs on a plain fuse, which cannot dim");
    return missing(
      module === undefined
        ? `${index.pathOf("circuits", circuit.id)}.module`
        : `${index.pathOf("modules", module.id)}.kind`,
    );
  }
  if (kind.output === "relay") return refused("kind-cannot-dim", `${kind.name} switches by relay; it has no PWM`);
  return known(kind);
}

function loadDimming(
  index: CoachIndex,
  judged: JudgedLoad,
  kind: Outcome<ModuleKind>,
  feed: Outcome<CircuitFeed> | undefined,
): LoadDimming {
  const { load } = judged;
  const path = index.pathOf("loads", load.id);
  const own = feed?.kind === "known" ? feedOfDriver(feed.value, load.id) : undefined;
  const withPath = <T>(outcome: Outcome<T>): Outcome<T> =>
    outcome.kind === "missing"
      ? missing(
          ...outcome.needs.map((need) => placed(index, path, kind.kind === "known" ? kind.value.id : undefined, need)),
        )
      : outcome;
  const lowest = kind.kind === "known" ? withPath(lowestUsefulDuty(kind.value, load, own)) : kind;
  const from = lowest.kind === "known" ? lowest.value.dutyRatio : 0;
  const flicker =
    kind.kind !== "known"
      ? kind
      : kind.value.pwmHz === undefined
        ? missing(`${index.pathOf("moduleKinds", kind.value.id)}.pwmHz`)
        : withPath(flickerOfLoad(load, kind.value.pwmHz, from, own));
  return {
    ...judged,
    id: load.id,
    isClassGuessed: load.class !== undefined && load.classBasis === "assumed",
    flicker,
    lowest,
    table: withPath(lightTable(load.class)),
    fit: fitOfLoad(load, nominalVOf(index)),
  };
}

const KIND_FIELDS: ReadonlySet<string> = new Set(["minDutyRatio", "pwmHz", "dutySteps", "output", "ratedDimmedA"]);
const LOAD_FIELD = /^[a-z][A-Za-z]*$/;

/** The full path of a field that an engine asked for by its own name. */
const placed = (index: CoachIndex, loadPath: string, kind: string | undefined, need: string): string => {
  if (KIND_FIELDS.has(need)) return kind === undefined ? need : `${index.pathOf("moduleKinds", kind)}.${need}`;
  return LOAD_FIELD.test(need) ? `${loadPath}.${need}` : need;
};

/** The highest of its lamps' lowest duties: below it, one of them gives nothing. */
function lowestOf(loads: readonly LoadDimming[]): Outcome<number> {
  const lamps = loads.filter((each) => each.steady.must !== "yes");
  const needs: string[] = [];
  let lowest = 0;
  for (const { lowest: own } of lamps) {
    if (own.kind === "known") lowest = Math.max(lowest, own.value.dutyRatio);
    else if (own.kind === "missing") needs.push(...own.needs);
    else return own;
  }
  if (lamps.length === 0) return refused("nothing-to-dim", "nothing on it may dim");
  return needs.length > 0 ? missing(...new Set(needs)) : known(lowest);
}

function driversOf(
  index: CoachIndex,
  suitability: CircuitSuitability,
  kind: Outcome<ModuleKind>,
  feed: Outcome<SpannedFeed>,
  lowest: Outcome<number>,
): CircuitDimming["drivers"] {
  if (kind.kind !== "known") return kind;
  if (kind.value.pwmHz === undefined) return missing(`${index.pathOf("moduleKinds", kind.value.id)}.pwmHz`);
  if (feed.kind !== "known") return feed;
  const least = kind.value.minDutyRatio === undefined ? 0.05 : Math.max(0.01, figureValue(kind.value.minDutyRatio));
  const rows: { dutyRatio: number; pulses: DriverPulses }[] = [];
  for (const dutyRatio of new Set([lowest.kind === "known" ? lowest.value : least, HALF])) {
    const pulses = driverPulses(
      suitability.loads.map((each) => each.load),
      feed.value,
      figureValue(kind.value.pwmHz),
      dutyRatio,
    );
    if (pulses.kind !== "known") return pulses;
    rows.push({ dutyRatio, pulses: pulses.value });
  }
  return known(rows);
}

function rampOfCircuit(
  loads: readonly LoadDimming[],
  kind: Outcome<ModuleKind>,
  lowest: Outcome<number>,
  steps: number | undefined,
): Outcome<EvenRamp> {
  if (kind.kind !== "known") return kind;
  if (lowest.kind !== "known") return lowest;
  // Of mixed lamps the quicker law: filaments beside LEDs then look a little darker than even.
  const exponents = loads.flatMap((each) => {
    const exponent = lightExponentOf(each.load.class);
    return exponent.kind === "known" ? [exponent.value] : [];
  });
  return evenRamp(kind.value, {
    steps,
    fromDutyRatio: lowest.value,
    lightExponent: exponents.length === 0 ? undefined : Math.min(...exponents),
  });
}
