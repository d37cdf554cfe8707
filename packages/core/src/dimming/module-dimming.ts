import { known, missing, type Outcome, refused } from "../quantity/index.js";
import type { CoachIndex, ModuleId, ModuleKind } from "../record/index.js";
import { type BlockSuitability, blockSuitability } from "./block-suitability.js";
import { type CircuitDimming, type DimmingOptions, dimmingOf } from "./dimming-of.js";
import { type EvenRamp, evenRamp } from "./even-ramp.js";
import { lightExponentOf } from "./light-of-duty.js";

/** Two tables a kind needs: one for LEDs, one for filaments. */
export interface KindRamps {
  readonly led: Outcome<EvenRamp>;
  readonly filament: Outcome<EvenRamp>;
}

/** Everything that is known of dimming with one module. */
export interface ModuleDimming {
  readonly module: ModuleId;
  readonly kind: ModuleKind | undefined;
  readonly blocks: readonly { readonly block: string; readonly suitability: Outcome<BlockSuitability> }[];
  readonly ramps: KindRamps;
  readonly circuits: readonly CircuitDimming[];
}

/** Button ramps that look even on this kind of module, for lamps whose light follows the duty and for filaments. Missing and refused as `evenRamp`. */
export function rampsOfKind(kind: ModuleKind, steps: number | undefined = undefined): KindRamps {
  if (kind.output === "relay") {
    const no = refused("kind-cannot-dim", `${kind.name} switches by relay; it has no PWM`);
    return { led: no, filament: no };
  }
  const filament = lightExponentOf("filament");
  return {
    led: evenRamp(kind, { steps }),
    filament: evenRamp(kind, { steps, lightExponent: filament.kind === "known" ? filament.value : undefined }),
  };
}

/** What can be said of dimming with this module, its kind or another: blocks, ramps and every circuit on it. Refused: `no-such-module`. */
export function moduleDimming(
  index: CoachIndex,
  moduleId: string,
  options: DimmingOptions = {},
): Outcome<ModuleDimming> {
  const module = index.modules.get(moduleId);
  if (module === undefined) return refused("no-such-module", `the record has no module ${moduleId}`);
  const kind = options.kind ?? (module.kind === undefined ? undefined : index.moduleKinds.get(module.kind));
  const circuits = index.circuitsOfModule.get(module.id) ?? [];
  const noKind = missing(`${index.pathOf("modules", module.id)}.kind`);
  return known({
    module: module.id,
    kind,
    blocks: (kind?.dimBlocks ?? []).map((block) => ({
      block: block.id,
      suitability: blockSuitability(index, circuits, kind!, block, options.wishes),
    })),
    ramps: kind === undefined ? { led: noKind, filament: noKind } : rampsOfKind(kind, options.steps),
    circuits: circuits.flatMap((circuit) => {
      const one = dimmingOf(index, circuit.id, options);
      return one.kind === "known" ? [one.value] : [];
    }),
  });
}
