import {
  type Figure,
  figureValue,
  known,
  missing,
  type Outcome,
  refused,
  type Source,
  type Span,
  spanOf,
} from "../quantity/index.js";
import type { Fuse, FuseType } from "../record/index.js";
import { bladeGates, cartridgeGates, type FuseGate } from "../tables/index.js";
import { type GateCurve, latestCurve, soonestCurve } from "./gate-curve.js";

/** One published set of gates; a family whose standard is not told may stand under several. */
export interface GateSet {
  readonly name: string;
  readonly gates: readonly FuseGate[];
  /** The soonest and the latest that these gates allow. */
  readonly soonest: GateCurve;
  readonly latest: GateCurve;
  readonly source: Source;
}

const gateSet = (name: string, gates: readonly FuseGate[], source: Source): GateSet => ({
  name,
  gates,
  soonest: soonestCurve(gates),
  latest: latestCurve(gates),
  source,
});

/** A fuse with the gates between which it opens. */
export interface FuseGates {
  readonly type: FuseType;
  readonly ratedA: number;
  readonly ratedSpan: Span;
  /** It keeps at least one of these. */
  readonly sets: readonly GateSet[];
  /** Path of the fuse in the record. */
  readonly path: string;
}

/** Gates that somebody read off the fuse's own sheet. */
const OWN_SHEET: Source = {
  id: "part-sheet",
  name: "the part's own sheet or print, as read into the record",
  how: "seen",
};

const fromTable = (family: string): GateSet[] => {
  const found = cartridgeGates(family);
  return found.kind === "known" ? [gateSet(family, found.value, found.source)] : [];
};

/** IEC 60127-2 quick-acting: the table prints its first row under a longer name, because that row says for which ratings it holds. */
const iecQuick = (): GateSet[] => {
  const rows = [...fromTable("IEC 60127-2 F, 0.125-10 A"), ...fromTable("IEC F")];
  const first = rows[0];
  return first === undefined
    ? []
    : [
        gateSet(
          "IEC 60127-2 F",
          rows.flatMap((row) => row.gates),
          first.source,
        ),
      ];
};

/** Every published set that a fuse of this type and rating may stand under; none where no table holds its family. */
function setsOf(type: FuseType, ratedA: number): readonly GateSet[] {
  switch (type) {
    case "blade": {
      const { value, source } = bladeGates();
      return [gateSet("ISO 8820-3 blade", value, source)];
    }
    case "glass-fast":
      return [...fromTable("UL 248-14 fast"), ...iecQuick()];
    case "glass-slow":
      return fromTable(ratedA <= 3 ? "UL 248-14 slow, <=3 A" : "UL 248-14 slow, >3 A");
    default:
      return [];
  }
}

const isGate = (gate: { ratio: number; minS?: number | undefined; maxS?: number | undefined }): boolean =>
  gate.ratio > 0 && (gate.minS ?? 0) >= 0 && (gate.maxS ?? Number.POSITIVE_INFINITY) >= (gate.minS ?? 0);

/**
 * Between which gates does this fuse open? Its own sheet's where the record has them (`fuse.gates`), else its family's published ones: blade
 * ISO 8820-3 (from memory); quick glass UL 248-14 or IEC 60127-2 F, whichever is the wider, since the record does not tell which; slow glass
 * UL 248-14. Missing, with the field: no rating, no type, or a family that no table holds (bolt-down, cartridge, breaker, fusible link, slow blade);
 * nothing is made up for those. Refused: `rating-not-positive`, `gate-faulty`. `typeOfKind`: what the module takes, where the fuse's own type is absent.
 */
export function fuseGatesOf(fuse: Fuse | undefined, path: string, typeOfKind?: FuseType): Outcome<FuseGates> {
  if (fuse?.ratedA === undefined) return missing(`${path}.ratedA`);
  const type = fuse.type ?? typeOfKind;
  const ratedA = figureValue(fuse.ratedA as Figure);
  if (!(ratedA > 0))
    return refused("rating-not-positive", `${path}.ratedA: a rating above 0 A is wanted, got ${ratedA}`);
  const ratedSpan = spanOf(fuse.ratedA as Figure, "rating");
  const own = fuse.gates ?? [];
  if (own.length > 0) {
    const faulty = own.findIndex((gate) => !isGate(gate));
    if (faulty >= 0)
      return refused(
        "gate-faulty",
        `${path}.gates[${faulty}]: a ratio above 0 and a longest time not under the shortest are wanted`,
      );
    const gates = own.map(({ ratio, minS, maxS }) => ({
      ratio,
      ...(minS === undefined ? {} : { minS }),
      ...(maxS === undefined ? {} : { maxS }),
    }));
    const sets = [gateSet("its own sheet", gates, OWN_SHEET)];
    return known({ type: type ?? "cartridge", ratedA, ratedSpan, sets, path });
  }
  if (type === undefined) return missing(`${path}.type`);
  const sets = setsOf(type, ratedA);
  return sets.length === 0 ? missing(`${path}.gates`) : known({ type, ratedA, ratedSpan, sets, path });
}
