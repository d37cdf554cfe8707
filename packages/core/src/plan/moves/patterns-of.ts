import { spanOf } from "../../quantity/index.js";
import type { DimBlockId, ModuleKind } from "../../record/index.js";
import type { BlockCheck } from "../block-check.js";
import { ratingObstacles } from "../candidate.js";
import { fitFuse } from "../fuse-fit.js";
import { wholeMinutes } from "../labour.js";
import { settingFound } from "../option.js";
import type { FuseChange } from "../plan.js";
import { type Basis, type Ground, openChannels, worthOf } from "./ground.js";
import type { MovePattern } from "./problem.js";

/** What a channel does under a pattern. `free`: either, as needed. `unread`: nobody could read it. `dark`: nothing, as far as is known: the module is dead or of unknown kind. */
export type ChannelMode = "dims" | "switches" | "free" | "unread" | "dark";

/** A pattern with what the placings need to know; its price, parts and minutes in money are filled in with the whole problem. */
export interface GroundPattern {
  readonly pattern: Omit<MovePattern, "cost" | "part" | "frees">;
  readonly kind: ModuleKind | undefined;
  readonly isAsFound: boolean;
  modeOf(channel: number): ChannelMode;
}

/** Above this many blocks on a kind whose sheet lists no settings (and that is not set channel by channel), only none and all that may be enabled are offered. */
const MOST_COMBINED_BLOCKS = 8;

const unique = <T>(items: readonly T[]): T[] => [...new Set(items)];
const rounded = (currentA: number): number => Math.round(currentA * 1e6) / 1e6;
const sumA = (loads: readonly { readonly highA: number | undefined }[]): number =>
  loads.reduce((sum, on) => sum + (on.highA ?? 0), 0);

/** Every block by itself and of one channel, no list of settings: each channel is set as needed. */
function isSetByChannel(kind: ModuleKind): boolean {
  const blocks = kind.dimBlocks ?? [];
  const channels = blocks.flatMap((block) => unique(block.channels));
  return (
    (kind.bank?.options ?? []).length === 0 &&
    blocks.length > 0 &&
    channels.length === blocks.length &&
    unique(channels).length === channels.length
  );
}

interface Setting {
  readonly enables: readonly DimBlockId[];
  readonly isFree: boolean;
}

/**
 * The settings of a kind with the fixed loads alone: those its sheet lists, else every combination of blocks that may be enabled. `asked`: what the user has said of
 * this module's blocks; then each combination must be a pattern of its own, or at least those asked for.
 */
function settingsOf(kind: ModuleKind, checks: readonly BlockCheck[], asked: readonly DimBlockId[][]): Setting[] {
  const free = checks.filter((check) => check.obstacles.length === 0).map((check) => check.block.id);
  const listed = kind.bank?.options ?? [];
  if (listed.length > 0)
    return listed
      .map((setting) => ({ enables: unique(setting.enables), isFree: false }))
      .filter((setting) => setting.enables.every((id) => free.includes(id)));
  const exactly = asked
    .filter((enables) => enables.every((id) => free.includes(id)))
    .map((enables) => ({ enables: unique(enables), isFree: false }));
  const isCombined = free.length <= MOST_COMBINED_BLOCKS;
  if (isSetByChannel(kind) && !(asked.length > 0 && isCombined)) return [{ enables: free, isFree: true }, ...exactly];
  if (!isCombined) return [{ enables: [], isFree: false }, { enables: free, isFree: false }, ...exactly];
  return Array.from({ length: 2 ** free.length }, (_, mask) => ({
    enables: free.filter((_id, i) => (mask >> i) % 2 === 1),
    isFree: false,
  }));
}

const channelsOf = (kind: ModuleKind | undefined, enables: readonly DimBlockId[]): ReadonlySet<number> =>
  new Set((kind?.dimBlocks ?? []).filter((block) => enables.includes(block.id)).flatMap((block) => block.channels));

/** Channels left, by what they may do. */
function slotsOf(ground: Ground, kind: ModuleKind | undefined, modeOf: (channel: number) => ChannelMode) {
  const modes = openChannels(ground, kind?.channels ?? Math.max(0, ...ground.loads.map((on) => on.channel))).map(
    modeOf,
  );
  return {
    slots: modes.length,
    dimmable: modes.filter((mode) => mode === "dims" || mode === "free").length,
    switchable: modes.filter((mode) => mode === "switches" || mode === "free").length,
  };
}

function fixedEffect(basis: Basis, checks: readonly BlockCheck[], enables: readonly DimBlockId[]) {
  const on = checks.filter((check) => enables.includes(check.block.id));
  const dims = unique(on.flatMap((check) => check.dims));
  const spoiled = unique(on.flatMap((check) => check.spoils));
  return { dims, spoiled, inDoubt: [], value: worthOf(basis.demand, dims, spoiled) };
}

/** What a kept module may carry beside its fixed loads: its rating, or what it carries now where that is more or cannot be judged. */
function keptMostA(ground: Ground): number {
  const own = ground.circuits.map((each) => each.on);
  const rated = ground.present?.ratedTotalA;
  const isKnown = ground.loads.every((on) => on.highA !== undefined);
  if (!isKnown || rated === undefined) return rounded(sumA(own));
  return rounded(Math.max(spanOf(rated, "rating").lo, sumA(ground.loads)) - sumA(ground.fixed));
}

function asFound(basis: Basis, ground: Ground): GroundPattern {
  const { present, module, isDead } = ground;
  const found = present === undefined || isDead ? undefined : settingFound(module, present);
  const checks = present === undefined ? [] : ground.blocksOf(present);
  const effect = isDead ? { dims: [], spoiled: [], inDoubt: [], value: 0 } : fixedEffect(basis, checks, found ?? []);
  const inDoubt =
    isDead || found !== undefined
      ? []
      : unique(checks.flatMap((check) => check.spoils)).filter(
          (load) => basis.demand.wishes.get(load)?.wish === "must-stay-steady",
        );
  const enabled = channelsOf(present, found ?? []);
  const blocked = channelsOf(
    present,
    (present?.dimBlocks ?? []).map((block) => block.id),
  );
  const modeOf = (channel: number): ChannelMode => {
    if (present === undefined || isDead) return "dark";
    if (found === undefined) return blocked.has(channel) ? "unread" : "switches";
    return enabled.has(channel) ? "dims" : "switches";
  };
  return {
    kind: present,
    isAsFound: true,
    modeOf,
    pattern: {
      key: "as found",
      kind: present?.id,
      isReplaced: false,
      isTouched: false,
      enables: found ?? [],
      isFree: false,
      minutes: 0,
      ...effect,
      inDoubt,
      value: inDoubt.reduce((value, load) => value - (basis.demand.wishes.get(load)?.value ?? 0), effect.value),
      fuses: [],
      ...slotsOf(ground, present, modeOf),
      mostA: keptMostA(ground),
    },
  };
}

function touched(
  basis: Basis,
  ground: Ground,
  kind: ModuleKind,
  setting: Setting,
  isReplaced: boolean,
  fuses: readonly FuseChange[],
): GroundPattern {
  const checks = ground.blocksOf(kind);
  const enabled = channelsOf(kind, setting.enables);
  const modeOf = (channel: number): ChannelMode =>
    enabled.has(channel) ? (setting.isFree ? "free" : "dims") : "switches";
  // Where each channel is set as needed, a fixed circuit dims only where that is worth something.
  const worth = setting.isFree
    ? setting.enables.filter((id) => checks.some((check) => check.block.id === id && check.dims.length > 0))
    : setting.enables;
  const effect = fixedEffect(basis, checks, worth);
  const { policy } = basis;
  const rated = kind.ratedTotalA === undefined ? 0 : spanOf(kind.ratedTotalA, "rating").lo;
  return {
    kind,
    isAsFound: false,
    modeOf,
    pattern: {
      key: `${kind.id}[${setting.isFree ? "as needed" : [...setting.enables].sort().join(" ")}]`,
      kind: kind.id,
      isReplaced,
      isTouched: true,
      enables: setting.enables,
      isFree: setting.isFree,
      minutes:
        (isReplaced ? wholeMinutes(kind.installMin) : wholeMinutes(policy.bankSettingMin)) +
        fuses.length * wholeMinutes(policy.fuseChangeMin),
      ...effect,
      fuses,
      ...slotsOf(ground, kind, modeOf),
      mostA: isReplaced ? rounded(rated - sumA(ground.fixed)) : keptMostA(ground),
    },
  };
}

const sameBlocks = (a: readonly string[], b: readonly string[]): boolean =>
  a.length === b.length && a.every((block) => b.includes(block));

/** Everything that can be done with this module as a whole, what stands now first. */
export function patternsOf(basis: Basis, ground: Ground): GroundPattern[] {
  const { present, isLocked, isDead } = ground;
  const found = asFound(basis, ground);
  if (isLocked || present === undefined) return [found];
  const patterns: GroundPattern[] = [found];
  const asked = basis.demand.fixedChoices.flatMap(({ choice }) =>
    choice.module === ground.module.id && choice.enables !== undefined ? [[...choice.enables]] : [],
  );
  if (!isDead && (present.dimBlocks ?? []).length > 0) {
    const before = settingFound(ground.module, present);
    for (const setting of settingsOf(present, ground.blocksOf(present), asked))
      if (setting.isFree || before === undefined || !sameBlocks(setting.enables, before))
        patterns.push(touched(basis, ground, present, setting, false, []));
  }
  for (const kind of ground.kinds) {
    const fits = ground.fixed.map((on) => fitFuse(basis.policy, kind, on));
    if (ratingObstacles(basis.index, kind, ground.fixed).length > 0 || fits.some((fit) => fit.obstacle !== undefined))
      continue;
    const fuses = fits.flatMap((fit) => fit.change ?? []);
    for (const setting of settingsOf(kind, ground.blocksOf(kind), asked))
      patterns.push(touched(basis, ground, kind, setting, true, fuses));
  }
  const seen = new Set<string>();
  return patterns.filter(({ pattern }) => !seen.has(pattern.key) && Boolean(seen.add(pattern.key)));
}
