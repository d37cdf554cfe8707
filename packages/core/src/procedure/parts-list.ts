import type { Plan } from "../plan/index.js";
import type { CoachIndex, ModuleKindId } from "../record/index.js";

/** One line of the parts list. A part from stock costs nothing in this job. */
export interface PartLine {
  readonly what: string;
  readonly quantity: number;
  readonly partNumber?: string;
  /** Whole minor units, tax not in it; absent where the record has no price. */
  readonly eachCents?: number;
  readonly fromStock: boolean;
  readonly kind?: ModuleKindId;
}

/** What must lie ready: the modules to fit, those on hand first, and the fuses that change. `index`: the coach as found. */
export function partsListOf(plan: Plan, index: CoachIndex): PartLine[] {
  const wanted = new Map<ModuleKindId, number>();
  for (const choice of plan.modules)
    if (choice.isTouched && choice.isReplaced) wanted.set(choice.to, (wanted.get(choice.to) ?? 0) + 1);
  const lines: PartLine[] = [];
  for (const [id, count] of wanted) {
    const kind = index.moduleKinds.get(id);
    const what = kind?.name ?? id;
    const number = kind?.partNumber === undefined ? {} : { partNumber: kind.partNumber };
    const stocked = Math.min(count, kind?.inStock ?? 0);
    if (stocked > 0) lines.push({ what, quantity: stocked, ...number, fromStock: true, kind: id });
    if (count > stocked)
      lines.push({
        what,
        quantity: count - stocked,
        ...number,
        ...(kind?.price === undefined ? {} : { eachCents: Math.round(kind.price * 100) }),
        fromStock: false,
        kind: id,
      });
  }
  const fuses = new Map<string, number>();
  for (const change of plan.fuses) {
    const circuit = index.circuits.get(change.circuit);
    const choice = plan.modules.find((one) => one.module === circuit?.module && one.isReplaced);
    const type = (choice && index.moduleKinds.get(choice.to)?.fuseType) ?? circuit?.fuse?.type ?? "type not on record";
    const what = `Fuse ${change.toA} A, ${type}`;
    fuses.set(what, (fuses.get(what) ?? 0) + 1);
  }
  for (const [what, quantity] of fuses) lines.push({ what, quantity, fromStock: false });
  return lines;
}
