import type { Circuit, CoachIndex } from "../record/index.js";
import { readOption } from "../switchbank/index.js";

/** Does this circuit's channel dim as its module's option switches stand? Where that is not known it is taken not to: the battery then lasts less. */
export function isDimmingChannel(index: CoachIndex, circuit: Circuit): boolean {
  const module = circuit.module === undefined ? undefined : index.modules.get(circuit.module);
  const kind = module?.kind === undefined ? undefined : index.moduleKinds.get(module.kind);
  const { channel } = circuit;
  if (module === undefined || kind === undefined || channel === undefined || kind.output === "relay") return false;
  const blocks = (kind.dimBlocks ?? []).filter((block) => block.channels.includes(channel));
  if (blocks.length === 0 || kind.bank === undefined || module.positionsFound === undefined) return false;
  const enabled = readOption(kind.bank, module.positionsFound);
  return enabled.kind === "known" && blocks.some((block) => enabled.value.includes(block.id));
}
