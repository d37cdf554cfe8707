/** A point of the single-line diagram. `end`: a module or fuse block at the right; `battery` and `source` at the left. */
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
  /** First and last lane that touch a point. */
  readonly spanOf: ReadonlyMap<string, readonly [number, number]>;
  readonly links: readonly PlacedLink[];
  /** Links that would close a ring, cross another or lead to a point that is not on the diagram; they are said in words beside it. */
  readonly notDrawn: readonly DiagramLink[];
}

const isSource = (node: DiagramNode): boolean => node.kind === "source" || node.kind === "battery";

/** What the steps of a layout share. */
interface Work {
  readonly byId: ReadonlyMap<string, DiagramNode>;
  readonly touching: ReadonlyMap<string, readonly DiagramLink[]>;
  readonly layerOf: Map<string, number>;
  readonly spanOf: Map<string, [number, number]>;
  readonly placed: PlacedLink[];
  readonly used: Set<DiagramLink>;
  /** Last lane in use. */
  lane: number;
}

const touch = (work: Work, id: string, lane: number): void => {
  const span = work.spanOf.get(id);
  work.spanOf.set(id, span === undefined ? [lane, lane] : [Math.min(span[0], lane), Math.max(span[1], lane)]);
};

const neighbours = (work: Work, node: DiagramNode): { link: DiagramLink; other: DiagramNode }[] =>
  (work.touching.get(node.id) ?? []).flatMap((link) => {
    const other = work.byId.get(link.from === node.id ? link.to : link.from);
    return other === undefined || other === node ? [] : [{ link, other }];
  });

/** Points without a branch of their own first, the branch that holds further sources last: then no source's lane meets another bar. */
function orderOf(
  work: Work,
  node: DiagramNode,
  seen: ReadonlySet<string>,
): { link: DiagramLink; other: DiagramNode }[] {
  const weigh = (start: DiagramNode): number => {
    const reached = new Set([...seen, node.id]);
    const queue = [start];
    let sources = 0;
    for (let next = queue.pop(); next !== undefined; next = queue.pop()) {
      if (reached.has(next.id)) continue;
      reached.add(next.id);
      if (isSource(next)) sources += 1;
      else queue.push(...neighbours(work, next).map(({ other }) => other));
    }
    return start.kind === "end" ? -1 : sources;
  };
  return neighbours(work, node)
    .filter(({ other }) => !isSource(other) && !seen.has(other.id))
    .map((each) => ({ ...each, weight: weigh(each.other) }))
    .sort((a, b) => a.weight - b.weight);
}

/** Walks away from the supply; every link to the right gets a lane, the first of a point its own entry lane. */
function walk(work: Work, node: DiagramNode, layer: number): void {
  work.layerOf.set(node.id, layer);
  let isFirst = true;
  for (const { link, other } of orderOf(work, node, new Set(work.layerOf.keys()))) {
    if (work.used.has(link) || work.layerOf.has(other.id)) continue;
    work.used.add(link);
    if (!isFirst) work.lane += 1;
    isFirst = false;
    work.placed.push({ link, lane: work.lane, parent: node, child: other });
    touch(work, node.id, work.lane);
    touch(work, other.id, work.lane);
    walk(work, other, layer + 1);
  }
}

/** The path from the root to its deepest bar with sources: the last bar child each time. Only along it can a source be reached from the left. */
function trunkOf(work: Work, root: DiagramNode): DiagramNode[] {
  const trunk: DiagramNode[] = [];
  for (let at: DiagramNode | undefined = root; at !== undefined; ) {
    const current: DiagramNode = at;
    const last = work.placed.filter(({ parent }) => parent === current).at(-1)?.child;
    at = last?.kind === "bar" ? last : undefined;
    if (at !== undefined) trunk.push(at);
  }
  return trunk;
}

/** Puts the further sources at the left edge, those of the nearer bars above those of the farther ones. */
function placeSources(work: Work, root: DiagramNode): void {
  let next = (work.spanOf.get(root.id)?.[0] ?? 0) + 1;
  for (const bar of trunkOf(work, root)) {
    const entry = work.placed.find(({ child }) => child === bar)?.lane ?? 0;
    for (const { link, other } of neighbours(work, bar)) {
      if (!isSource(other) || work.layerOf.has(other.id) || work.used.has(link)) continue;
      const lane = Math.max(next, entry + 1);
      next = lane + 1;
      work.used.add(link);
      work.layerOf.set(other.id, 0);
      work.placed.push({ link, lane, parent: bar, child: other });
      touch(work, bar.id, lane);
      touch(work, other.id, lane);
      work.lane = Math.max(work.lane, lane);
    }
  }
}

/**
 * Places points in layers by their distance from the first battery and gives every conductor a lane, so that none crosses another: branches go
 * right in walking order, further sources come in from the left edge.
 */
export function layDiagram(nodes: readonly DiagramNode[], links: readonly DiagramLink[]): DiagramLayout {
  const touching = new Map<string, DiagramLink[]>();
  for (const link of links)
    for (const end of new Set([link.from, link.to])) touching.set(end, [...(touching.get(end) ?? []), link]);
  const byId = new Map(nodes.map((node) => [node.id, node]));
  const work: Work = { byId, touching, layerOf: new Map(), spanOf: new Map(), placed: [], used: new Set(), lane: -1 };
  const roots = [...nodes.filter((node) => node.kind === "battery"), ...nodes.filter((node) => node.kind === "source")];
  for (const root of roots) {
    // A source whose point is already drawn but cannot be reached from the left stays out, and is said in words.
    if (work.layerOf.has(root.id) || neighbours(work, root).some(({ other }) => work.layerOf.has(other.id))) continue;
    work.lane += 1;
    touch(work, root.id, work.lane);
    walk(work, root, 0);
    placeSources(work, root);
  }
  const layers = Math.max(2, 1 + Math.max(0, ...work.layerOf.values()));
  for (const node of nodes) if (node.kind === "end" && work.layerOf.has(node.id)) work.layerOf.set(node.id, layers - 1);
  return {
    lanes: work.lane + 1,
    layers,
    layerOf: work.layerOf,
    spanOf: work.spanOf,
    links: work.placed,
    notDrawn: links.filter((link) => !work.used.has(link)),
  };
}
