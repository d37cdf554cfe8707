import type { CoachRecord, Module } from "../record/index.js";
import { circuitsAfterWires } from "./apply-wires.js";
import type { ModuleChoice, Plan } from "./plan.js";

/** Seen on the old part, or at the old setting: no longer known once a module is changed. */
function changedModule(module: Module, choice: ModuleChoice): Module {
  const { positionsFound, answersTo, ...kept } = module;
  const set = choice.positions === undefined ? {} : { positionsFound: choice.positions };
  if (!choice.isReplaced) return { ...kept, kind: choice.to, ...set } as Module;
  const { serial, isDead, ...place } = kept;
  return { ...place, kind: choice.to, ...set } as Module;
}

/**
 * The record as it will be when the plan is done: kinds, bank positions, fuses and wires changed, all else as it was. What was seen of an old part (serial,
 * positions found, address answered) is taken off a changed module; what the new one shows must be seen again.
 * A fuse of another type than the new kind takes becomes the kind's type.
 */
export function applyPlan(record: CoachRecord, plan: Plan): CoachRecord {
  const choices = new Map(plan.modules.filter((choice) => choice.isTouched).map((choice) => [choice.module, choice]));
  const fuses = new Map(plan.fuses.map((change) => [change.circuit, change]));
  if (choices.size === 0 && fuses.size === 0 && plan.wiresMoved === 0) return record;
  const moved = new Set(plan.moves.map((move) => move.circuit));
  const kindAt = new Map(
    (record.modules ?? []).map((module) => [module.id, choices.get(module.id)?.to ?? module.kind]),
  );
  const kinds = new Map((record.moduleKinds ?? []).map((kind) => [kind.id, kind]));
  return {
    ...record,
    ...(record.modules === undefined
      ? {}
      : {
          modules: record.modules.map((module) => {
            const choice = choices.get(module.id);
            return choice === undefined ? module : changedModule(module, choice);
          }),
        }),
    ...(record.circuits === undefined
      ? {}
      : {
          circuits: circuitsAfterWires(record, plan).map((circuit) => {
            const change = fuses.get(circuit.id);
            const choice = circuit.module === undefined ? undefined : choices.get(circuit.module);
            const kind = circuit.module === undefined ? undefined : kindAt.get(circuit.module);
            const isNewSeat = choice?.isReplaced === true || moved.has(circuit.id);
            const type = isNewSeat && kind !== undefined ? kinds.get(kind)?.fuseType : undefined;
            const isNewType = type !== undefined && circuit.fuse !== undefined && circuit.fuse.type !== type;
            if (change === undefined && !isNewType) return circuit;
            // A changed fuse is another part: what was measured on the old one goes.
            const { resistanceOhm, interruptA, ...fuse } = circuit.fuse ?? {};
            return {
              ...circuit,
              fuse: {
                ...fuse,
                ...(isNewType ? { type } : {}),
                ...(change === undefined ? {} : { ratedA: change.toA }),
              },
            };
          }),
        }),
  };
}
