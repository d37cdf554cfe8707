import type { CoachIndex } from "../record/index.js";
import { circuitName, kindName, moduleName, placeName } from "./names.js";
import type { Step } from "./procedure.js";

/** The names that the words of a step need, read once. */
export interface StepNames {
  readonly module: string;
  readonly modulePlace: string;
  readonly supply: string;
  readonly supplyId: string;
  readonly place: string;
  readonly fromKind: string;
  readonly toKind: string;
  readonly feedNode: string | undefined;
}

export function stepNames(step: Step, before: CoachIndex, after: CoachIndex): StepNames {
  const at = step.parameters;
  const text = (key: string): string | undefined => (at[key] === undefined ? undefined : String(at[key]));
  const supply = text("supply");
  const node = text("feedNode");
  return {
    module: moduleName(before, step.module),
    modulePlace: placeName(before, before.modules.get(step.module ?? "")?.place),
    supply: before.supplies.get(supply ?? "")?.name ?? supply ?? "the supply",
    supplyId: supply ?? "",
    place: placeName(before, text("place")),
    fromKind: kindName(before, text("from")),
    toKind: kindName(after, text("to")),
    feedNode: node === undefined ? undefined : (before.nodes.get(node)?.name ?? node),
  };
}

/** The fuses of a module by channel, as found or as they go in, with the changes said. */
export function fuseLines(step: Step, before: CoachIndex, after: CoachIndex): string {
  const lines = (after.circuitsOfModule.get(step.module ?? "") ?? []).map((circuit) => {
    const was = before.circuits.get(circuit.id)?.fuse;
    const is = circuit.fuse;
    const ampere = (figure: NonNullable<typeof is>["ratedA"]) =>
      figure === undefined ? "size not on record" : `${typeof figure === "number" ? figure : figure.value} A`;
    const what = `channel ${circuit.channel ?? "?"} (${circuitName(before, before.circuits.get(circuit.id) ?? circuit)})`;
    if (is === undefined && circuit.isSpare === true) return `channel ${circuit.channel ?? "?"}: spare, no fuse`;
    if (is === undefined) return `${what}: fuse not on record`;
    const size = ampere(is.ratedA);
    const changed = [
      ...(ampere(was?.ratedA) !== size ? [`in place of ${ampere(was?.ratedA)}`] : []),
      ...(was?.type !== is.type ? [`type ${is.type} in place of ${was?.type ?? "one not on record"}`] : []),
    ];
    return `${what}: ${size}${changed.length > 0 ? `, ${changed.join(", ")}` : ""}`;
  });
  return lines.length === 0 ? "No channel of this module is on record." : `${lines.join("; ")}.`;
}
