import type { Circuit, CoachIndex, Module } from "../../record/index.js";

/** What lies near a circuit: its own module, the modules its wire can be brought to, and what hangs on them. */
export interface Near {
  readonly home: Module;
  readonly modules: readonly Module[];
  readonly circuits: readonly Circuit[];
}

export function nearOf(index: CoachIndex, circuit: Circuit | undefined): Near | undefined {
  const home = circuit?.module === undefined ? undefined : index.modules.get(circuit.module);
  if (circuit === undefined || home === undefined) return undefined;
  const modules = [home];
  for (const id of circuit.reach ?? []) {
    const module = index.modules.get(id);
    if (module !== undefined && !modules.includes(module)) modules.push(module);
  }
  return { home, modules, circuits: modules.flatMap((module) => index.circuitsOfModule.get(module.id) ?? []) };
}
