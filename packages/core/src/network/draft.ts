import type { Span } from "../quantity/index.js";
import { type CoachIndex, type FullPolicy, policyOf } from "../record/index.js";
import { WayFinder } from "./circuit-way.js";
import type { LoadBounds } from "./coach-network.js";
import type { LoadModel } from "./load-model.js";
import type { NetworkBranch, NetworkLoad } from "./network.js";
import type { Edge } from "./reach.js";
import type { Series } from "./series.js";
import type { CoachState } from "./state.js";

/** A coach's network while it is being laid out: nodes, branches, loads and what was left out or assumed on the way. */
export class Draft {
  readonly policy: FullPolicy;
  readonly finder: WayFinder;
  readonly branches: NetworkBranch[] = [];
  readonly ohmSpan: Span[] = [];
  readonly emfSpan: (Span | undefined)[] = [];
  readonly loads: NetworkLoad[] = [];
  readonly loadBounds: LoadBounds[] = [];
  readonly leftOut = new Set<string>();
  readonly nodeOf = new Map<string, number>();
  /** Closed cables between record nodes, and by node those that meet there. */
  readonly edges: Edge[] = [];
  readonly edgesAt: readonly number[][];
  /** How many nodes are the record's own; they come first. */
  readonly recordNodes: number;
  nodeCount = 0;

  constructor(
    readonly index: CoachIndex,
    readonly state: CoachState,
    readonly nominalV: number,
  ) {
    this.policy = policyOf(index.record);
    this.finder = new WayFinder(index, this.policy);
    for (const id of index.nodes.keys()) this.nodeOf.set(id, this.nodeCount++);
    this.recordNodes = this.nodeCount;
    this.edgesAt = Array.from({ length: this.recordNodes }, () => []);
  }

  newNode(): number {
    return this.nodeCount++;
  }

  /** The node of this id; undefined where no id is given or none is on record. */
  nodeAt(id: string | undefined): number | undefined {
    return id === undefined ? undefined : this.nodeOf.get(id);
  }

  branch(from: number, to: number, way: Pick<Series, "ohm" | "span">, emfV?: number, emf?: Span): number {
    this.branches.push({ from, to, resistanceOhm: way.ohm, ...(emfV === undefined ? {} : { emfV }) });
    this.ohmSpan.push(way.span);
    this.emfSpan.push(emf);
    return this.branches.length - 1;
  }

  load(from: number, to: number, model: LoadModel, least: LoadModel, most: LoadModel): number {
    this.loads.push({ from, to, model });
    this.loadBounds.push({ least, most });
    return this.loads.length - 1;
  }
}
