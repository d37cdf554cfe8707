import type { Circuit, CoachIndex } from "@fusebook/core/record";
import type { MapGroup } from "../drawings/door-map.js";
import { fusePatchOf } from "./fuse-patch-of.js";
import { feedsOf, fuseNumber, moduleName, placeName } from "./names.js";

/** Every fuse of the coach, by module and then by plain fuse block; a channel without a circuit on record is listed as not known. */
export function mapOf(index: CoachIndex): MapGroup[] {
  const modules = (index.record.modules ?? []).map((module): MapGroup => {
    const kind = module.kind === undefined ? undefined : index.moduleKinds.get(module.kind);
    const circuits = index.circuitsOfModule.get(module.id) ?? [];
    const address = module.address === undefined ? "address not known" : `address ${module.address}`;
    const taken = new Set(circuits.map((circuit) => circuit.channel));
    const unseen = Array.from({ length: kind?.channels ?? 0 }, (_, i) => i + 1).filter(
      (channel) => !taken.has(channel),
    );
    return {
      title: moduleName(index, module),
      subtitle: [kind?.id, address].filter(Boolean).join(" · "),
      fuses: [
        ...circuits.map((circuit) => entryOf(index, circuit)),
        ...unseen.map((channel) => ({
          number: String(channel),
          patch: fusePatchOf(undefined),
          feeds: "nothing on record",
        })),
      ].sort((a, b) => Number(a.number) - Number(b.number)),
    };
  });
  const blocks = new Map<string, Circuit[]>();
  for (const circuit of index.record.circuits ?? []) {
    if (circuit.module !== undefined && index.modules.has(circuit.module)) continue;
    const node = circuit.fusePosition?.node ?? "";
    blocks.set(node, [...(blocks.get(node) ?? []), circuit]);
  }
  const plain = [...blocks].map(([nodeId, circuits]): MapGroup => {
    const node = index.nodes.get(nodeId);
    return {
      title: node?.name ?? "Fuses not on a module",
      subtitle: placeName(index, node?.place) || "place not known",
      fuses: circuits.map((circuit) => entryOf(index, circuit)),
    };
  });
  return [...modules, ...plain].filter((group) => group.fuses.length > 0);
}

const entryOf = (index: CoachIndex, circuit: Circuit) => ({
  number: fuseNumber(circuit),
  patch: fusePatchOf(circuit.fuse),
  feeds: feedsOf(index, circuit),
});
