import type { CircuitId, CoachIndex, FixedChoice, ModuleId, ModuleKindId } from "../record/index.js";
import type { PlanFault } from "./plan.js";

interface Settled {
  readonly lockedModules: ReadonlySet<ModuleId>;
  readonly lockedCircuits: ReadonlySet<CircuitId>;
  readonly forbidden: ReadonlySet<ModuleKindId>;
  readonly faults: PlanFault[];
}

interface Placed {
  readonly choice: FixedChoice;
  readonly path: string;
}

function unknownIn(index: CoachIndex, choice: FixedChoice): readonly [string, string, string] | undefined {
  const kind = choice.kind === undefined ? undefined : index.moduleKinds.get(choice.kind);
  if (choice.module !== undefined && !index.modules.has(choice.module)) return ["module", choice.module, "module"];
  if (choice.kind !== undefined && kind === undefined) return ["kind", choice.kind, "module kind"];
  if (choice.circuit !== undefined && !index.circuits.has(choice.circuit))
    return ["circuit", choice.circuit, "circuit"];
  if (choice.toModule !== undefined && !index.modules.has(choice.toModule))
    return ["toModule", choice.toModule, "module"];
  const block = choice.enables?.find(
    (id) => kind !== undefined && !(kind.dimBlocks ?? []).some((each) => each.id === id),
  );
  return block === undefined ? undefined : ["enables", block, `dim block of ${choice.kind}`];
}

/** What one choice asks that another lock forbids, or undefined. */
function againstLock(index: CoachIndex, choice: FixedChoice, settled: Settled): string | undefined {
  if (choice.isForbidden === true) return undefined;
  if (choice.module !== undefined && settled.lockedModules.has(choice.module)) {
    const present = index.modules.get(choice.module)?.kind;
    if (choice.kind !== undefined && choice.kind !== present)
      return `${choice.module} is locked as it is and is to get ${choice.kind}; unlock it or remove the choice`;
  }
  if (choice.kind !== undefined && settled.forbidden.has(choice.kind) && choice.module !== undefined) {
    const present = index.modules.get(choice.module)?.kind;
    if (choice.kind !== present)
      return `${choice.kind} is ruled out and is to be fitted at ${choice.module}; allow the kind or remove the choice`;
  }
  const circuit = choice.circuit === undefined ? undefined : index.circuits.get(choice.circuit);
  if (circuit === undefined || choice.toModule === undefined || choice.toModule === circuit.module) return undefined;
  if (settled.lockedCircuits.has(circuit.id))
    return `${circuit.id} or a load of it is locked to stay on ${circuit.module ?? "its place"} and is to go to ${choice.toModule}; remove one`;
  for (const module of [circuit.module, choice.toModule])
    if (module !== undefined && (settled.lockedModules.has(module) || index.modules.get(module)?.isLocked === true))
      return `${circuit.id} is to go to ${choice.toModule}, but ${module} is locked; unlock it or remove the choice`;
  return undefined;
}

const subjectOf = (choice: FixedChoice): string | undefined => choice.module ?? choice.circuit;

/** Two choices that cannot both hold: one subject, two answers. */
function contradicts(a: FixedChoice, b: FixedChoice): boolean {
  if (subjectOf(a) !== subjectOf(b) || a.isForbidden === true || b.isForbidden === true) return false;
  const differ = (x: string | boolean | undefined, y: string | boolean | undefined): boolean =>
    x !== undefined && y !== undefined && x !== y;
  const blocks = (of: FixedChoice): string | undefined =>
    of.enables === undefined ? undefined : [...of.enables].sort().join(" ");
  return (
    differ(a.kind, b.kind) ||
    differ(a.toModule, b.toModule) ||
    differ(a.isDimmed, b.isDimmed) ||
    differ(blocks(a), blocks(b))
  );
}

/** The choices that can be heard; those that name nothing on record or contradict a lock or an earlier one are left out, each with a fault by its path. */
export function fixedChoicesOf(
  index: CoachIndex,
  choices: readonly FixedChoice[],
  path: string,
  settled: Settled,
): readonly Placed[] {
  const heard: Placed[] = [];
  choices.forEach((choice, i) => {
    const here = `${path}[${i}]`;
    const fault = (code: string, at: string, said: string): void =>
      void settled.faults.push({ path: at, code, message: `${at}: ${said}` });
    const unknown = unknownIn(index, choice);
    if (unknown !== undefined) {
      const [field, id, what] = unknown;
      fault("choice-names-unknown", `${here}.${field}`, `the record has no ${what} ${id}; correct the id or remove it`);
      return;
    }
    if (
      (choice.module === undefined) === (choice.circuit === undefined) ||
      (choice.module !== undefined && choice.kind === undefined && choice.enables === undefined) ||
      (choice.circuit !== undefined && choice.toModule === undefined && choice.isDimmed === undefined)
    ) {
      fault(
        "choice-says-nothing",
        here,
        "name a module with a kind or dim blocks, or a circuit with where it goes or whether it dims; the choice is left out",
      );
      return;
    }
    const lock = againstLock(index, choice, settled);
    if (lock !== undefined) {
      fault("locks-contradict", here, lock);
      return;
    }
    const before = heard.find((each) => contradicts(each.choice, choice));
    if (before !== undefined) {
      fault("choices-contradict", here, `says otherwise than ${before.path}; the first is kept, remove one`);
      return;
    }
    heard.push({ choice, path: here });
  });
  return heard;
}
