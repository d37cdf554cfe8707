import { figureValue } from "../../quantity/index.js";
import type { ModuleKind } from "../../record/index.js";
import type { ChannelLoad } from "../channel-load.js";
import { wholeMinutes } from "../labour.js";
import { centsOf } from "../merge.js";
import type { Basis, Ground, GroundCircuit } from "./ground.js";
import type { GroundPattern } from "./patterns-of.js";
import type { Placing } from "./problem.js";
import type { Relief } from "./relief.js";
import { arrivingUnder, type KindChecks, type Sitting, stayingUnder } from "./sittings.js";

/** Everything the placings of one circuit are made from. */
export interface Site {
  readonly basis: Basis;
  readonly grounds: readonly Ground[];
  /** By module. */
  readonly patterns: readonly (readonly GroundPattern[])[];
  readonly checks: KindChecks;
  readonly rateCentsPerHour: number;
}

const rounded = (currentA: number): number => Math.round(currentA * 1e6) / 1e6;

/** Cents of the wire by the metre; 0 where no price is on record. */
export const rewireCents = (basis: Basis, on: ChannelLoad): number =>
  centsOf((basis.policy.rewirePartsPerM ?? 0) * figureValue(on.circuit.out?.lengthM ?? 0));

export const rewireMinutes = (basis: Basis, on: ChannelLoad): number =>
  Math.ceil(basis.policy.rewireBaseMin + basis.policy.rewireMinPerM * figureValue(on.circuit.out?.lengthM ?? 0) - 1e-9);

/** A side of the circuit's home and of the module it goes to that differ: its wire would be switched at the wrong pole. */
const sidesDiffer = (home: Ground, kind: ModuleKind | undefined): boolean =>
  home.present?.side !== undefined && kind?.side !== undefined && home.present.side !== kind.side;

/** Modules a circuit may go to, its own first. */
export function reachOf(site: Site, home: Ground, circuit: GroundCircuit): number[] {
  if (!circuit.mayMove) return [home.order];
  const ids: readonly string[] = circuit.on.circuit.reach ?? [];
  const others = site.grounds.filter((ground) => ground !== home && !ground.isLocked && ids.includes(ground.module.id));
  return [home.order, ...others.map((ground) => ground.order)];
}

interface Draft {
  readonly module: number;
  readonly isMoved: boolean;
  readonly sitting: Sitting;
  readonly patterns: number[];
}

function keyOf({ module, isMoved, sitting }: Draft): string {
  const flags =
    Number(isMoved) +
    2 * Number(sitting.isDimmed) +
    4 * Number(sitting.takesDimmable) +
    8 * Number(sitting.takesSwitchable) +
    16 * Number(sitting.changesFuse) +
    32 * Number(sitting.isRewired);
  return `${module} ${flags} ${sitting.value} ${sitting.dims} / ${sitting.spoiled} / ${sitting.inDoubt}`;
}

/** The same way of sitting under several patterns is one placing. */
function gathered(drafts: readonly Draft[]): Draft[] {
  const byKey = new Map<string, Draft>();
  for (const draft of drafts) {
    const key = keyOf(draft);
    const same = byKey.get(key);
    if (same === undefined) byKey.set(key, draft);
    else same.patterns.push(...draft.patterns);
  }
  return [...byKey.values()];
}

function sittingsOf(site: Site, home: Ground, circuit: GroundCircuit, on: ChannelLoad): Draft[] {
  const { basis, checks } = site;
  const drafts: Draft[] = [];
  const add = (module: number, isMoved: boolean, pattern: number, sittings: readonly Sitting[]): void => {
    for (const sitting of sittings) drafts.push({ module, isMoved, sitting, patterns: [pattern] });
  };
  site.patterns[home.order]?.forEach((at, p) => {
    add(home.order, false, p, stayingUnder(basis, checks, at, on));
  });
  for (const order of circuit.mayMove ? reachOf(site, home, circuit) : []) {
    const isOwn = order === home.order;
    site.patterns[order]?.forEach((at, p) => {
      if (site.grounds[order]?.isDead === true && at.isAsFound) return;
      if (!sidesDiffer(home, at.kind))
        add(order, true, p, arrivingUnder(checks, at, on, isOwn ? at.modeOf(on.channel) : undefined));
    });
  }
  return gathered(drafts);
}

function placingOf(
  site: Site,
  home: Ground,
  on: ChannelLoad,
  relief: Relief | undefined,
  draft: Draft | undefined,
): Placing {
  const { basis } = site;
  const { policy } = basis;
  const feeds = relief?.feeds ?? [];
  const isMoved = draft?.isMoved === true;
  const isRewired = draft?.sitting.isRewired === true;
  const changesFuse = draft?.sitting.changesFuse === true;
  const minutes =
    (isMoved ? wholeMinutes(draft.module === home.order ? policy.moveWithinMin : policy.moveBetweenMin) : 0) +
    (changesFuse ? wholeMinutes(policy.fuseChangeMin) : 0) +
    (isRewired ? rewireMinutes(basis, on) : 0) +
    feeds.length * wholeMinutes(policy.steadyFeedMin);
  const partsCents = feeds.length * centsOf(policy.steadyFeedParts) + (isRewired ? rewireCents(basis, on) : 0);
  return {
    module: draft?.module,
    isMoved,
    isDimmed: draft?.sitting.isDimmed ?? false,
    patterns: draft?.patterns ?? [],
    takesDimmable: draft?.sitting.takesDimmable ?? false,
    takesSwitchable: draft?.sitting.takesSwitchable ?? false,
    currentA: draft === undefined ? 0 : rounded(on.highA ?? 0),
    steadyA: rounded(relief?.steadyA ?? 0),
    cost: partsCents * 60 + minutes * site.rateCentsPerHour,
    minutes,
    wiresMoved: feeds.length + Number(isMoved) + Number(isRewired),
    value: draft?.sitting.value ?? 0,
    dims: draft?.sitting.dims ?? [],
    spoiled: draft?.sitting.spoiled ?? [],
    inDoubt: draft?.sitting.inDoubt ?? [],
    changesFuse,
    isRewired,
    steady: feeds.map((feed) => feed.load.id),
  };
}

/** Every way in which this circuit may sit, how it stays first. With loads fed apart it is offered only where the rest dims, or where nothing is left. */
export function placingsOf(site: Site, home: Ground, circuit: GroundCircuit): Placing[] {
  const plain = sittingsOf(site, home, circuit, circuit.on).map((draft) =>
    placingOf(site, home, circuit.on, undefined, draft),
  );
  const { relief } = circuit;
  if (relief === undefined) return plain;
  if (relief.rest.loads.length === 0) return [...plain, placingOf(site, home, relief.rest, relief, undefined)];
  return [
    ...plain,
    ...sittingsOf(site, home, circuit, relief.rest)
      .filter((draft) => draft.sitting.isDimmed)
      .map((draft) => placingOf(site, home, relief.rest, relief, draft)),
  ];
}
