import { spanOf } from "../../quantity/index.js";
import type { LoadId, ModuleKind } from "../../record/index.js";
import type { ChannelLoad } from "../channel-load.js";
import { type Basis, dimmedAlone, mayRewire, worthOf } from "./ground.js";
import type { ChannelMode, GroundPattern } from "./patterns-of.js";
import { type FuseFit, fuseFitOf } from "./rewire.js";

/** How a circuit would sit on one channel under one pattern. */
export interface Sitting {
  readonly isDimmed: boolean;
  readonly takesDimmable: boolean;
  readonly takesSwitchable: boolean;
  readonly value: number;
  readonly dims: readonly LoadId[];
  readonly spoiled: readonly LoadId[];
  readonly inDoubt: readonly LoadId[];
  readonly changesFuse: boolean;
  readonly isRewired: boolean;
}

/** What one circuit may do on one kind, found once. */
interface KindCheck {
  /** Its current is known and within the channel's switched rating. */
  readonly isCarried: boolean;
  readonly mayDim: boolean;
  readonly dims: readonly LoadId[];
  readonly spoils: readonly LoadId[];
  readonly dimValue: number;
  readonly fuse: FuseFit | undefined;
}

/** Remembers what each circuit may do on each kind. */
export class KindChecks {
  private readonly known = new Map<ChannelLoad, Map<string, KindCheck>>();
  constructor(private readonly basis: Basis) {}
  of(kind: ModuleKind, on: ChannelLoad): KindCheck {
    let mine = this.known.get(on);
    if (mine === undefined) {
      mine = new Map();
      this.known.set(on, mine);
    }
    let check = mine.get(kind.id);
    if (check === undefined) {
      const dimmed = dimmedAlone(this.basis, kind, on);
      const rated = kind.ratedSwitchedA;
      check = {
        isCarried:
          on.highA !== undefined && (on.highA === 0 || (rated !== undefined && on.highA <= spanOf(rated, "rating").lo)),
        mayDim: dimmed.obstacles.length === 0,
        dims: dimmed.dims,
        spoils: dimmed.spoils,
        dimValue: worthOf(this.basis.demand, dimmed.dims, dimmed.spoils),
        fuse: fuseFitOf(this.basis.policy, kind, on, mayRewire(this.basis, on.circuit)),
      };
      mine.set(kind.id, check);
    }
    return check;
  }
}

const NOTHING = { value: 0, dims: [], spoiled: [], inDoubt: [] } as const;
const KEPT_FUSE: FuseFit = { change: undefined, rewire: undefined };

const withFuse = (fuse: FuseFit) => ({
  changesFuse: fuse.change !== undefined,
  isRewired: fuse.rewire !== undefined,
});

/** A kind set channel by channel that has other channels beside: there a circuit that stays and switches holds a channel that could dim. */
const holdsDimmable = (at: GroundPattern): boolean => at.pattern.switchable > at.pattern.dimmable;

const switched = (at: GroundPattern, mode: ChannelMode, isStay: boolean, fuse: FuseFit): Sitting => ({
  isDimmed: false,
  takesDimmable: isStay && mode === "free" && holdsDimmable(at),
  takesSwitchable: true,
  ...NOTHING,
  ...withFuse(fuse),
});

const dimmed = (check: KindCheck, fuse: FuseFit): Sitting => ({
  isDimmed: true,
  takesDimmable: true,
  takesSwitchable: false,
  value: check.dimValue,
  dims: check.dims,
  spoiled: check.spoils,
  inDoubt: [],
  ...withFuse(fuse),
});

/** How the circuit may sit if it stays on its channel under this pattern. */
export function stayingUnder(basis: Basis, checks: KindChecks, at: GroundPattern, on: ChannelLoad): Sitting[] {
  const mode = at.modeOf(on.channel);
  const { kind, pattern } = at;
  if (mode === "unread" || mode === "dark" || kind === undefined) {
    // A dead module dims nothing; a bank that nobody could read leaves what was to stay steady in doubt.
    const spoils = mode === "dark" || kind === undefined ? [] : checks.of(kind, on).spoils;
    const inDoubt = spoils.filter((load) => basis.demand.wishes.get(load)?.wish === "must-stay-steady");
    const value = inDoubt.reduce((sum, load) => sum - (basis.demand.wishes.get(load)?.value ?? 0), 0);
    return [
      {
        isDimmed: false,
        takesDimmable: false,
        takesSwitchable: false,
        ...NOTHING,
        value,
        inDoubt,
        ...withFuse(KEPT_FUSE),
      },
    ];
  }
  const check = checks.of(kind, on);
  if (pattern.isReplaced && !check.isCarried) return [];
  const fuse = pattern.isReplaced ? check.fuse : KEPT_FUSE;
  if (fuse === undefined) return [];
  const sittings: Sitting[] = [];
  const mayDim = at.isAsFound || check.mayDim;
  if ((mode === "dims" || mode === "free") && mayDim) sittings.push(dimmed(check, fuse));
  if (mode === "switches" || mode === "free") sittings.push(switched(at, mode, true, fuse));
  return sittings;
}

/** How the circuit may sit if it comes to this module under this pattern; `homeMode`: what its own channel does, where the module is its own. */
export function arrivingUnder(
  checks: KindChecks,
  at: GroundPattern,
  on: ChannelLoad,
  homeMode: ChannelMode | undefined,
): Sitting[] {
  const { kind, pattern } = at;
  if (kind === undefined) return [];
  const check = checks.of(kind, on);
  if (!check.isCarried || check.fuse === undefined) return [];
  const sittings: Sitting[] = [];
  // A move to a channel like its own gives nothing that staying does not; from one that could dim to one that cannot, it makes room.
  if (pattern.dimmable > 0 && check.mayDim && homeMode !== "dims" && homeMode !== "free")
    sittings.push(dimmed(check, check.fuse));
  if (pattern.switchable > 0 && homeMode !== "switches" && (homeMode !== "free" || holdsDimmable(at)))
    sittings.push(switched(at, "switches", false, check.fuse));
  return sittings;
}
