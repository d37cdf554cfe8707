import { figureValue, showQuantity } from "@fusebook/core/quantity";
import type { Circuit } from "@fusebook/core/record";
import type { Loom, LoomBundle } from "../drawings/loom-picture.js";
import { marginOf } from "./margin-of.js";
import type { CoachAsItStands } from "./module-page-of.js";
import { moduleName } from "./names.js";

/** The whole coach as bundles of circuits, with everything on. */
export function loomOf(coach: CoachAsItStands): Loom {
  const { index, units } = coach;
  const battery = (index.record.supplies ?? []).find((supply) => supply.kind === "battery");
  const words = [
    battery?.capacityAh === undefined ? "Battery" : showQuantity(figureValue(battery.capacityAh), "capacity", units),
    ...(battery?.openCircuitV === undefined ? [] : [showQuantity(figureValue(battery.openCircuitV), "voltage", units)]),
  ];
  const circuitOf = (circuit: Circuit): LoomBundle["circuits"][number] => {
    const amps = coach.allOn?.circuitA.get(circuit.id);
    return {
      currentA: amps?.kind === "known" ? amps.value : undefined,
      margin: marginOf(circuit, coach.bySubject, units).margin,
    };
  };
  const plain = (index.record.circuits ?? []).filter(
    (circuit) => circuit.module === undefined || !index.modules.has(circuit.module),
  );
  const bundles: LoomBundle[] = [
    ...(index.record.modules ?? []).map((module) => ({
      name: moduleName(index, module),
      circuits: (index.circuitsOfModule.get(module.id) ?? []).map(circuitOf),
    })),
    { name: "Plain fuses", circuits: plain.map(circuitOf) },
  ];
  return { battery: words, bundles };
}
