import {
  circuitFuseOf,
  circuitInrushOf,
  type FarFault,
  type FuseGates,
  faultAtFarEnd,
  type Inrush,
} from "../protection/index.js";
import type { Outcome, Source } from "../quantity/index.js";
import type { Circuit, Load } from "../record/index.js";
import type { CoachContext } from "./context.js";
import { drawOf, loadsOf, runLeans } from "./leans.js";
import type { Leaned } from "./settle.js";

/** What the engine of protection says of one circuit, each asked when a rule first wants it. */
interface CircuitAsked {
  fuse?: Outcome<FuseGates>;
  fault?: Outcome<FarFault>;
  inrush?: Outcome<Inrush>;
}

const ASKED = new WeakMap<CoachContext["inState"], Map<string, CircuitAsked>>();

/** Keyed by the context's own solver: contexts that share it look at one record. */
function askedOf(context: CoachContext, circuit: Circuit): CircuitAsked {
  const all = ASKED.get(context.inState) ?? new Map<string, CircuitAsked>();
  ASKED.set(context.inState, all);
  const found = all.get(circuit.id) ?? {};
  all.set(circuit.id, found);
  return found;
}

/** The gates of the circuit's own fuse. */
export function fuseAsked(context: CoachContext, circuit: Circuit): Outcome<FuseGates> {
  const asked = askedOf(context, circuit);
  asked.fuse ??= circuitFuseOf(context.index, circuit);
  return asked.fuse;
}

/** The short at its far end and at the end of each load's own wire. */
export function faultAsked(context: CoachContext, circuit: Circuit): Outcome<FarFault> {
  const asked = askedOf(context, circuit);
  asked.fault ??= faultAtFarEnd(context.index, circuit.id);
  return asked.fault;
}

/** What all its loads draw when they start at one moment. */
export function inrushAsked(context: CoachContext, circuit: Circuit): Outcome<Inrush> {
  const asked = askedOf(context, circuit);
  asked.inrush ??= circuitInrushOf(context.index, circuit.id, faultAsked(context, circuit));
  return asked.inrush;
}

/** The publications a fuse's gates come from. */
export const gateSources = (fuse: FuseGates): Source[] => fuse.sets.map((set) => set.source);

/** What the current of a short leans on: the wires out and back, and the load's own where one is asked about. */
export function faultLeans(context: CoachContext, circuit: Circuit, load?: Load): Leaned[] {
  const { index } = context;
  const path = index.pathOf("circuits", circuit.id);
  const tail = load?.tail === undefined ? [] : runLeans(load.tail, `${index.pathOf("loads", load.id)}.tail`);
  return [
    ...(circuit.out === undefined ? [] : runLeans(circuit.out, `${path}.out`)),
    ...(circuit.return === undefined ? [] : runLeans(circuit.return, `${path}.return`)),
    ...tail,
  ];
}

/** What a start leans on: the draw of each load, and how it starts where the record does not say. */
export function startLeans(context: CoachContext, circuit: Circuit, inrush: Inrush): Leaned[] {
  const { index } = context;
  const starts = new Set(["inrushRatio", "stallA", "runUpS"]);
  return loadsOf(context, circuit).flatMap((load): Leaned[] => {
    const path = index.pathOf("loads", load.id);
    const assumed = inrush.assumed.filter((one) => one.path.startsWith(`${path}.`));
    const lacking = assumed.map((one) => one.path.slice(path.length + 1)).filter((field) => starts.has(field));
    const starting = lacking.map((field) => ({
      path: `${path}.${field}`,
      figure: undefined,
      instrument: "clamp meter" as const,
      place: load.place,
    }));
    return [...starting, drawOf(context, load)];
  });
}
