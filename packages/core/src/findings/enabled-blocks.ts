import { known, missing, type Outcome } from "../quantity/index.js";
import type { Circuit, CoachIndex, DimBlockId, Module } from "../record/index.js";
import { readOption } from "../switchbank/index.js";
import type { CoachContext } from "./context.js";

/**
 * Which blocks of a module dim today, by its option switches as found? None on a kind that only switches. Missing: the kind, its output, its
 * blocks, its option settings or the positions, by path. Refused where no listed setting looks like this.
 */
export function enabledBlocksOf(index: CoachIndex, module: Module): Outcome<readonly DimBlockId[]> {
  const path = index.pathOf("modules", module.id);
  const kind = module.kind === undefined ? undefined : index.moduleKinds.get(module.kind);
  if (kind === undefined) return missing(`${path}.kind`);
  const kindPath = index.pathOf("moduleKinds", kind.id);
  if (kind.output === "relay") return known([]);
  if (kind.output === undefined && kind.dimBlocks === undefined) return missing(`${kindPath}.output`);
  if (kind.dimBlocks === undefined) return missing(`${kindPath}.dimBlocks`);
  if (kind.dimBlocks.length === 0) return known([]);
  if (kind.bank?.options === undefined) return missing(`${kindPath}.bank.options`);
  if (module.positionsFound === undefined) return missing(`${path}.positionsFound`);
  const read = readOption(kind.bank, module.positionsFound);
  return read.kind === "missing" ? missing(`${path}.positionsFound`) : read;
}

/** Does this circuit's channel dim today? Missing where the module's option setting is not known; false off a module. */
export function isDimmedToday(context: CoachContext, circuit: Circuit): Outcome<boolean> {
  const module = circuit.module === undefined ? undefined : context.index.modules.get(circuit.module);
  if (module === undefined || circuit.channel === undefined) return known(false);
  const enabled = context.enabledBlocks(module);
  if (enabled.kind !== "known") return enabled;
  const kind = module.kind === undefined ? undefined : context.index.moduleKinds.get(module.kind);
  const channel = circuit.channel;
  return known(
    (kind?.dimBlocks ?? []).some((block) => enabled.value.includes(block.id) && block.channels.includes(channel)),
  );
}
