import { figureValue, showQuantity, type UnitChoice } from "@fusebook/core/quantity";
import { type Cable, type CoachIndex, type Supply, textValue } from "@fusebook/core/record";
import type { DiagramLink, DiagramNode } from "../drawings/diagram-layout.js";
import { moduleName } from "./names.js";

const supplyDetail = (supply: Supply, units: UnitChoice): string =>
  [
    supply.capacityAh === undefined ? "" : showQuantity(figureValue(supply.capacityAh), "capacity", units),
    supply.ratedA === undefined ? "" : `up to ${showQuantity(figureValue(supply.ratedA), "current", units)}`,
    supply.openCircuitV === undefined ? "" : showQuantity(figureValue(supply.openCircuitV), "voltage", units),
    supply.outputV === undefined ? "" : showQuantity(figureValue(supply.outputV), "voltage", units),
  ]
    .filter((word) => word !== "")
    .join(", ");

/** Size and length of a conductor in a few letters. */
export const conductorWords = (cable: Pick<Cable, "gauge" | "sectionMm2" | "lengthM">, units: UnitChoice): string =>
  [
    cable.gauge !== undefined
      ? textValue(cable.gauge)
      : cable.sectionMm2 !== undefined
        ? showQuantity(figureValue(cable.sectionMm2), "section", units)
        : "size ?",
    cable.lengthM === undefined ? "length ?" : showQuantity(figureValue(cable.lengthM), "length", units),
  ].join(", ");

/** The positive side of the coach as points and conductors. Returns and grounds stay out; they are in the wire list. */
export function diagramOf(index: CoachIndex, units: UnitChoice): { nodes: DiagramNode[]; links: DiagramLink[] } {
  const { record } = index;
  const isReturn = (id: string) => {
    const node = index.nodes.get(id);
    return node?.rail === "return" || node?.kind === "ground";
  };
  const plainAt = new Map<string, number>();
  for (const circuit of record.circuits ?? []) {
    const node = circuit.module === undefined ? circuit.fusePosition?.node : undefined;
    if (node !== undefined) plainAt.set(node, (plainAt.get(node) ?? 0) + 1);
  }
  const nodes: DiagramNode[] = [
    ...(record.supplies ?? []).map(
      (supply): DiagramNode => ({
        id: `supply ${supply.id}`,
        kind: supply.kind === "battery" ? "battery" : "source",
        name: supply.name,
        detail: supplyDetail(supply, units),
      }),
    ),
    ...(record.nodes ?? [])
      .filter((node) => !isReturn(node.id))
      .map((node): DiagramNode => ({ id: node.id, kind: "bar", name: node.name, detail: "" })),
    ...(record.modules ?? []).map(
      (module): DiagramNode => ({
        id: `module ${module.id}`,
        kind: "end",
        name: moduleName(index, module),
        detail: module.kind ?? "kind not known",
      }),
    ),
    ...[...plainAt].map(
      ([node, count]): DiagramNode => ({
        id: `block ${node}`,
        kind: "end",
        name: "Plain fuses",
        detail: `${count} fuses`,
      }),
    ),
  ];
  const bare = (from: string, to: string): DiagramLink => ({ from, to, text: "", fuse: "", disconnect: "" });
  const links: DiagramLink[] = [
    ...(record.supplies ?? []).flatMap((supply) =>
      supply.node === undefined ? [] : [bare(`supply ${supply.id}`, supply.node)],
    ),
    ...(record.cables ?? [])
      .filter((cable) => !isReturn(cable.from) && !isReturn(cable.to))
      .map(
        (cable): DiagramLink => ({
          from: cable.from,
          to: cable.to,
          text: conductorWords(cable, units),
          fuse:
            cable.protection === undefined
              ? ""
              : cable.protection.ratedA === undefined
                ? "? A"
                : `${figureValue(cable.protection.ratedA)} A`,
          disconnect: cable.disconnect?.name ?? "",
        }),
      ),
    ...(record.modules ?? []).flatMap((module) =>
      module.feedNode === undefined ? [] : [bare(module.feedNode, `module ${module.id}`)],
    ),
    ...[...plainAt.keys()].map((node) => bare(node, `block ${node}`)),
  ];
  return mergeThrough(nodes, links);
}

/** A terminal that only passes a conductor on to one supply or module is no bar worth drawing: the two links become one. */
function mergeThrough(nodes: DiagramNode[], links: DiagramLink[]): { nodes: DiagramNode[]; links: DiagramLink[] } {
  let [keptNodes, keptLinks] = [nodes, links];
  for (const node of nodes) {
    if (node.kind !== "bar") continue;
    const touching = keptLinks.filter((link) => link.from === node.id || link.to === node.id);
    const plain = touching.find((link) => link.text === "" && link.fuse === "" && link.disconnect === "");
    const other = touching.find((link) => link !== plain);
    if (touching.length !== 2 || plain === undefined || other === undefined) continue;
    const end = plain.from === node.id ? plain.to : plain.from;
    keptLinks = keptLinks.flatMap((link) =>
      link === plain
        ? []
        : link === other
          ? [{ ...other, from: other.from === node.id ? end : other.from, to: other.to === node.id ? end : other.to }]
          : [link],
    );
    keptNodes = keptNodes.filter((one) => one !== node);
  }
  return { nodes: keptNodes, links: keptLinks };
}
