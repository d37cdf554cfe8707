import type { Cable, WireRun } from "../record/index.js";
import type { CoachContext } from "./context.js";
import type { Said } from "./define-rule.js";
import { ofCable, ofCircuit } from "./subject.js";

/** One conductor that carries a circuit or feeds others, and where it stands in the record. */
export interface RunInUse {
  readonly subject: Said["subject"];
  readonly path: string;
  /** Undefined where the record says nothing of it at all. */
  readonly run: WireRun | Cable | undefined;
}

/** The out-wire of every circuit with loads, and every cable that counts by its copper. */
export function* runsInUse({ index }: CoachContext): Iterable<RunInUse> {
  for (const circuit of index.record.circuits ?? []) {
    if ((circuit.loads ?? []).length === 0) continue;
    const subject = ofCircuit(index, circuit);
    yield { subject, path: `${subject.path}.out`, run: circuit.out };
  }
  for (const cable of index.cables.values()) {
    if ((cable.kind ?? "wire") !== "wire") continue;
    const subject = ofCable(index, cable);
    yield { subject, path: subject.path, run: cable };
  }
}
