/** A point of the single-line diagram. `end`: a module or fuse block at the right. */
export interface DiagramNode {
  readonly id: string;
  readonly kind: "battery" | "source" | "bar" | "end";
  readonly name: string;
  readonly detail: string;
}

/** A conductor between two points. Empty strings where there is no fuse, no switch or nothing to say. */
export interface DiagramLink {
  readonly from: string;
  readonly to: string;
  readonly text: string;
  readonly fuse: string;
  readonly disconnect: string;
}

export interface PlacedLink {
  readonly link: DiagramLink;
  readonly lane: number;
  readonly parent: DiagramNode;
  readonly child: DiagramNode;
}

export interface DiagramLayout {
  readonly lanes: number;
  readonly layers: number;
  readonly layerOf: ReadonlyMap<string, number>;
  /** Lane on which a point is entered. */
  readonly laneOf: ReadonlyMap<string, number>;
  /** First and last lane that touch a point. */
  readonly spanOf: ReadonlyMap<string, readonly [number, number]>;
  readonly links: readonly PlacedLink[];
  /** Links that would close a ring or whose ends are not on the diagram; they are listed in words beside it. */
  readonly notDrawn: readonly DiagramLink[];
}

/**
 * Places points in layers by their distance from the first battery and gives every link a lane of its own in walking order, so that the lanes
 * below a point are consecutive and no conductor crosses another.
 */
export function layDiagram(nodes: readonly DiagramNode[], links: readonly DiagramLink[]): DiagramLayout {
  const byId = new Map(nodes.map((node) => [node.id, node]));
  const touching = new Map<string, DiagramLink[]>();
  for (const link of links)
    for (const end of [link.from, link.to]) touching.set(end, [...(touching.get(end) ?? []), link]);
  const layerOf = new Map<string, number>();
  const laneOf = new Map<string, number>();
  const spanOf = new Map<string, [number, number]>();
  const placed: PlacedLink[] = [];
  const used = new Set<DiagramLink>();
  let lane = 0;

  const touch = (id: string, at: number) => {
    const span = spanOf.get(id);
    spanOf.set(id, span === undefined ? [at, at] : [Math.min(span[0], at), Math.max(span[1], at)]);
  };
  /** Walks outward, longest branches last; returns nothing but fills the maps. */
  const walk = (node: DiagramNode, layer: number) => {
    layerOf.set(node.id, layer);
    let isFirst = true;
    const next = (touching.get(node.id) ?? []).filter((link) => !used.has(link));
    const order = next
      .map((link) => ({ link, other: byId.get(link.from === node.id ? link.to : link.from) }))
      .sort((a, b) => rank(a.other) - rank(b.other));
    for (const { link, other } of order) {
      if (used.has(link) || other === undefined || layerOf.has(other.id)) continue;
      used.add(link);
      if (!isFirst) lane += 1;
      isFirst = false;
      const at = lane;
      placed.push({ link, lane: at, parent: node, child: other });
      touch(node.id, at);
      laneOf.set(other.id, at);
      touch(other.id, at);
      const isSideSource = other.kind === "source" || other.kind === "battery";
      walk(other, isSideSource ? Math.max(1, layer) : layer + 1);
    }
  };
  const rank = (node: DiagramNode | undefined): number =>
    node === undefined ? 9 : node.kind === "source" || node.kind === "battery" ? 0 : node.kind === "end" ? 2 : 1;

  const roots = [...nodes.filter((node) => node.kind === "battery"), ...nodes.filter((node) => node.kind === "source")];
  for (const root of roots) {
    if (layerOf.has(root.id)) continue;
    if (layerOf.size > 0) lane += 1;
    laneOf.set(root.id, lane);
    touch(root.id, lane);
    walk(root, 0);
  }
  const ends = nodes.filter((node) => node.kind === "end" && layerOf.has(node.id));
  const layers = 1 + Math.max(0, ...[...layerOf.values()]);
  for (const end of ends) layerOf.set(end.id, layers - 1);
  return {
    lanes: layerOf.size === 0 ? 0 : lane + 1,
    layers: Math.max(2, layers),
    layerOf,
    laneOf,
    spanOf,
    links: placed,
    notDrawn: links.filter((link) => !used.has(link)),
  };
}
