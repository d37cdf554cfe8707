import type { ModuleChoice, Plan } from "../plan/index.js";
import type { CoachIndex, ModuleId } from "../record/index.js";
import { exchangeModule } from "./exchange-module.js";
import { caution, given, makeStep } from "./make-step.js";
import { byPlace, placesToOpen } from "./names.js";
import { reusesOf } from "./parts-list.js";
import type { Caution, Step } from "./procedure.js";
import { detectorSteps, fitWireSteps } from "./wire-steps.js";
import type { WireWork } from "./wire-work.js";

/** Mains wiring, or a box that has it, where the hand works. */
function placeCautions(index: CoachIndex, place: string): Caution[] {
  const mains = [...index.supplies.values()].filter(
    (supply) => supply.kind === "charger" && (supply.place === place || supply.isolation?.place === place),
  );
  return mains.length === 0 ? [] : [caution("mains-nearby", { what: mains.map((supply) => supply.name).join(", ") })];
}

/**
 * The work itself, place by place, each opened once; every bank is set before its module is fitted. Where wires move, every wire is labelled and off before the first
 * goes to its new channel, so that two may change places; a module's harness and fuses wait until its wires are in. Where a module taken out is fitted elsewhere, everything
 * comes out before anything goes in.
 */
export function exchangeSteps(
  before: CoachIndex,
  plan: Plan,
  after: CoachIndex,
  worked: readonly ModuleChoice[],
  work: WireWork,
): Step[] {
  const steps: Step[] = detectorSteps(before, work);
  const opened = new Set<string>();
  const open = (place: string | undefined) => {
    for (const each of placesToOpen(before, place))
      if (!opened.has(each)) {
        opened.add(each);
        steps.push(
          makeStep(
            `open-place-${each}`,
            "open-place",
            given({ place: each, reachedBy: before.places.get(each)?.reachedBy }),
            {
              cautions: placeCautions(before, each),
            },
          ),
        );
      }
  };
  const order: ModuleId[] = [];
  const reuse = reusesOf(plan, before);
  const fitting: Step[] = [];
  const later: Step[] = [];
  for (const choice of byPlace(before, worked)) {
    open(before.modules.get(choice.module)?.place);
    order.push(choice.module);
    const of = exchangeModule(before, after, plan, choice, work, reuse);
    steps.push(...of.out);
    (reuse.length > 0 ? fitting : steps).push(...of.in);
    (work.modules.has(choice.module) ? later : reuse.length > 0 ? fitting : steps).push(...of.closing);
  }
  steps.push(...fitting, ...fitWireSteps(before, after, plan, work, order), ...later);
  const wired = new Set(work.jobs.map((job) => job.circuit));
  for (const change of plan.fuses) {
    const circuit = before.circuits.get(change.circuit);
    // Said where the wire is fitted, or where the fuses of its module are sorted.
    if (wired.has(change.circuit)) continue;
    if (circuit?.module !== undefined && worked.some((one) => one.module === circuit.module && one.isTouched)) continue;
    open(before.modules.get(circuit?.module ?? "")?.place);
    steps.push(
      makeStep(`change-fuse-${change.circuit}`, "change-fuse", given({ fromA: change.fromA, toA: change.toA }), {
        circuit: change.circuit,
      }),
    );
  }
  return steps;
}
