import { type Figure, figureValue, spanOf } from "../quantity/index.js";
import type { Circuit, CoachIndex, FullPolicy, Load, Module, ModuleKind } from "../record/index.js";
import { type Assumed, CLASS_FIGURES, type ClassFigure } from "./class-figures.js";
import type { ConductorFigures } from "./conductor-size.js";
import { fuseResistance } from "./fuse-resistance.js";
import type { OhmDraw } from "./sampling/ohm-draw.js";
import { Way } from "./series.js";
import { conductorCOf, wireResistance } from "./wire-resistance.js";

/** The ways of one circuit: through the channel, out, and back. */
export interface CircuitWays {
  readonly feedId: string | undefined;
  readonly feedNeeds: readonly string[];
  /** The splice the out wire leaves from, when not the channel itself. */
  readonly spliceId: string | undefined;
  readonly returnId: string | undefined;
  readonly returnNeeds: readonly string[];
  readonly entry: Way;
  readonly out: Way;
  readonly back: Way;
}

/** Looks up the figures of one record, and notes each class figure that stands in for one. */
export class WayFinder {
  readonly assumed: Assumed[] = [];

  constructor(
    readonly index: CoachIndex,
    readonly policy: FullPolicy,
  ) {}

  wire(way: Way, place: "wire" | "return" | "tail", id: string, run: ConductorFigures | undefined, path: string): void {
    if (run === undefined) {
      way.needs.push(path);
      return;
    }
    const conductorC = conductorCOf(run, this.policy, (p) => this.index.places.get(p)?.zone);
    way.add(place, id, wireResistance(run, this.policy, conductorC, `${path}.`), `${path}.lengthM`);
  }

  /** A figure of the record, or the class figure, noted as assumed. */
  figure(
    way: Way,
    place: "module" | "connector",
    id: string,
    stated: Figure | undefined,
    own: ClassFigure,
    path: string,
  ): void {
    const ohm = stated === undefined ? own.value : Math.max(0, figureValue(stated));
    const span = stated === undefined ? own.span : spanOf(stated, "resistance");
    const isAssumed = stated === undefined;
    if (isAssumed) this.assumed.push({ path, value: own.value, source: own.source });
    const aspect = path.endsWith(".kind") ? { aspect: "contact" as const } : {};
    const draw: OhmDraw = {
      kind: "figure",
      ohm: { path, ...aspect, kind: "resistance", nominal: ohm, span, isAssumed },
    };
    way.put(place, id, { ohm, span, draw });
  }

  fuse(way: Way, id: string, fuse: Circuit["fuse"], path: string): void {
    const found = fuseResistance(fuse, path);
    if (found.assumedFrom)
      this.assumed.push({
        path: `${path}.${fuse?.ratedA === undefined ? "ratedA" : "resistanceOhm"}`,
        value: found.ohm,
        source: found.assumedFrom,
      });
    way.put("fuse", id, found);
  }

  /**
   * Order on a high-side channel: feed, fuse, contact, out wire, connectors, tail, load, return wire. A low-side channel's contact is in the return,
   * and its positive comes from where the out wire leaves.
   */
  waysOf(circuit: Circuit, path: string): CircuitWays {
    const entry = new Way();
    const out = new Way();
    const back = new Way();
    const module: Module | undefined =
      circuit.module === undefined ? undefined : this.index.modules.get(circuit.module);
    const kind: ModuleKind | undefined =
      module?.kind === undefined ? undefined : this.index.moduleKinds.get(module.kind);
    const isLow = kind?.side === "low";
    const modulePath = module ? this.index.pathOf("modules", module.id) : `${path}.module`;
    const feedNeeds: string[] = [];
    const returnNeeds: string[] = [];
    const splice = circuit.out?.node;
    let feedId: string | undefined;
    let returnId: string | undefined = circuit.return?.node;
    if (module && !isLow) {
      feedId = module.feedNode;
      if (feedId === undefined) feedNeeds.push(`${modulePath}.feedNode`);
    } else {
      feedId = splice ?? circuit.fusePosition?.node ?? (isLow ? module?.feedNode : undefined);
      if (feedId === undefined)
        feedNeeds.push(
          circuit.fusePosition ? `${path}.fusePosition.node` : isLow ? `${path}.out.node` : `${path}.module`,
        );
    }
    if (isLow && module) {
      returnId = module.returnNode ?? returnId;
      if (returnId === undefined) returnNeeds.push(`${modulePath}.returnNode`);
    } else if (returnId === undefined) returnNeeds.push(circuit.return ? `${path}.return.node` : `${path}.return`);
    const hasSplice = splice !== undefined && splice !== feedId;
    const first = hasSplice ? entry : out;
    this.fuse(first, circuit.id, circuit.fuse, `${path}.fuse`);
    const contact = (way: Way) => {
      if (!module) return;
      const kindPath = kind ? `${this.index.pathOf("moduleKinds", kind.id)}.onResistanceOhm` : `${modulePath}.kind`;
      this.figure(way, "module", module.id, kind?.onResistanceOhm, CLASS_FIGURES.contactOhm, kindPath);
    };
    if (!isLow) contact(first);
    this.wire(out, "wire", circuit.id, circuit.out, `${path}.out`);
    for (const [n, connector] of (circuit.connectors ?? []).entries())
      this.figure(
        out,
        "connector",
        circuit.id,
        connector.resistanceOhm,
        CLASS_FIGURES.connectorOhm,
        `${path}.connectors[${n}].resistanceOhm`,
      );
    this.wire(back, "return", circuit.id, circuit.return, `${path}.return`);
    if (isLow) contact(back);
    return { feedId, feedNeeds, spliceId: hasSplice ? splice : undefined, returnId, returnNeeds, entry, out, back };
  }

  tailOf(load: Load, path: string): Way | undefined {
    if (load.tail === undefined) return undefined;
    const way = new Way();
    this.wire(way, "tail", load.id, load.tail, `${path}.tail`);
    return way;
  }
}
