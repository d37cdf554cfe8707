import type { Cable, WireRun } from "../record/index.js";
import type { CoachContext } from "./context.js";
import type { Said } from "./define-rule.js";
import { loadsOf } from "./leans.js";
import { ofCable, ofCircuit, ofLoad } from "./subject.js";

/** One conductor that carries a circuit or feeds others, and where it stands in the record. */
export interface RunInUse {
  readonly subject: Said["subject"];
  readonly path: string;
  /** Undefined where the record says nothing of it at all. */
  readonly run: WireRun | Cable | undefined;
  /** Counts by its copper; a chassis, strap or bar counts by its resistance. */
  readonly isWire: boolean;
  readonly which: "out" | "return" | "tail" | "cable" | "structure";
}

/** The out-wire of every circuit with loads, its return and its loads' tails where the record has any, and every cable. */
export function* runsInUse(context: CoachContext): Iterable<RunInUse> {
  const { index } = context;
  for (const circuit of index.record.circuits ?? []) {
    if ((circuit.loads ?? []).length === 0) continue;
    const subject = ofCircuit(index, circuit);
    yield { subject, path: `${subject.path}.out`, run: circuit.out, isWire: true, which: "out" };
    if (circuit.return !== undefined)
      yield { subject, path: `${subject.path}.return`, run: circuit.return, isWire: true, which: "return" };
    for (const load of loadsOf(context, circuit)) {
      if (load.tail === undefined) continue;
      const owner = ofLoad(index, load);
      yield { subject: owner, path: `${owner.path}.tail`, run: load.tail, isWire: true, which: "tail" };
    }
  }
  for (const cable of index.cables.values()) {
    const subject = ofCable(index, cable);
    const isWire = (cable.kind ?? "wire") === "wire";
    yield { subject, path: subject.path, run: cable, isWire, which: isWire ? "cable" : "structure" };
  }
}
