import type { Finding } from "../findings/index.js";
import type { CoachIndex } from "../record/index.js";

/** Every id that these stand for: a circuit brings its loads, a module its circuits and their loads. */
export function idsAbout(index: CoachIndex, ids: readonly string[]): ReadonlySet<string> {
  const all = new Set<string>();
  const put = (id: string): void => {
    if (all.has(id)) return;
    all.add(id);
    for (const circuit of index.circuitsOfModule.get(id) ?? []) put(circuit.id);
    for (const load of index.circuits.get(id)?.loads ?? []) put(load);
  };
  for (const id of ids) put(id);
  return all;
}

/** Is the finding about one of these? */
export const isAbout = (finding: Finding, ids: ReadonlySet<string>): boolean => ids.has(finding.subject.id);
