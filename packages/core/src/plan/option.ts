import type { CoachIndex, DimBlockId, FullPolicy, LoadId, Module, ModuleKind } from "../record/index.js";
import { readOption } from "../switchbank/index.js";
import { type BlockCheck, checkBlock } from "./block-check.js";
import { type Candidate, candidateOf } from "./candidate.js";
import { type ChannelLoad, channelLoadsOf } from "./channel-load.js";
import type { Demand } from "./demand.js";
import { wholeMinutes } from "./labour.js";
import type { FuseChange } from "./plan.js";

/** One thing that can be done with one module position. */
export interface Option {
  readonly module: Module;
  /** Place of the module in the record. */
  readonly order: number;
  readonly present: ModuleKind | undefined;
  readonly kind: ModuleKind | undefined;
  readonly isReplaced: boolean;
  readonly isTouched: boolean;
  readonly enabledBefore: readonly DimBlockId[] | undefined;
  readonly enables: readonly DimBlockId[];
  readonly fuses: readonly FuseChange[];
  readonly dims: readonly LoadId[];
  readonly spoiled: readonly LoadId[];
  /** Loads asked to stay steady whose block may or may not be enabled: the setting as found could not be read. */
  readonly inDoubt: readonly LoadId[];
  /** In thousandths of a weight. */
  readonly value: number;
  /** Work at the module; access not counted. */
  readonly minutes: number;
  /** Orders and names the option: "as found", or kind and blocks. */
  readonly key: string;
}

/** Names an option among all options of all modules. */
export const optionKey = (option: Option): string => `${option.module.id} ${option.key}`;

/** Everything about one position that the options and the explanations need. */
export interface Position {
  readonly module: Module;
  readonly present: ModuleKind | undefined;
  readonly isLocked: boolean;
  readonly loads: readonly ChannelLoad[];
  readonly candidates: readonly Candidate[];
  /** Checks of each block of a kind with what hangs on this module. */
  blocksOf(kind: ModuleKind): readonly BlockCheck[];
  readonly options: readonly Option[];
  /** True: every option leaves a dead module where it is. */
  readonly keepsDead: boolean;
}

/** Above this many blocks on a kind whose sheet lists no settings, only its best setting is offered, not every combination. */
const MOST_FREE_BLOCKS = 6;

const unique = <T>(items: readonly T[]): T[] => [...new Set(items)];

/** The settings of a kind: those its sheet lists, or any combination of blocks where it lists none. */
function settingsOf(kind: ModuleKind, checks: readonly BlockCheck[]): DimBlockId[][] {
  const listed = kind.bank?.options ?? [];
  if (listed.length > 0) return listed.map((setting) => unique(setting.enables));
  const free = checks.filter((check) => check.obstacles.length === 0);
  if (free.length > MOST_FREE_BLOCKS)
    return [[], free.filter((check) => check.dims.length > 0).map((check) => check.block.id)];
  return Array.from({ length: 2 ** free.length }, (_, mask) =>
    free.filter((_block, i) => (mask >> i) % 2 === 1).map((check) => check.block.id),
  );
}

/** Which blocks the positions as found enable; undefined where that cannot be read. */
export function settingFound(module: Module, kind: ModuleKind): readonly DimBlockId[] | undefined {
  if ((kind.dimBlocks ?? []).length === 0) return [];
  if (kind.bank === undefined || module.positionsFound === undefined) return undefined;
  const setting = readOption(kind.bank, module.positionsFound);
  return setting.kind === "known" ? setting.value : undefined;
}

const sameBlocks = (a: readonly string[], b: readonly string[]): boolean =>
  a.length === b.length && a.every((block) => b.includes(block));

interface Effect {
  readonly dims: readonly LoadId[];
  readonly spoiled: readonly LoadId[];
  readonly value: number;
}

function effectOf(demand: Demand, checks: readonly BlockCheck[], enables: readonly DimBlockId[]): Effect {
  const on = checks.filter((check) => enables.includes(check.block.id));
  const dims = unique(on.flatMap((check) => check.dims));
  const spoiled = unique(on.flatMap((check) => check.spoils));
  const gained = dims.reduce((sum, load) => sum + (demand.wishes.get(load)?.value ?? 0), 0);
  const lost = spoiled.reduce((sum, load) => {
    const wish = demand.wishes.get(load);
    return sum + (wish?.wish === "must-stay-steady" ? wish.value : demand.steadyValue);
  }, 0);
  return { dims, spoiled, value: gained - lost };
}

const blockIsKnown = (checks: readonly BlockCheck[], enables: readonly DimBlockId[]): boolean =>
  enables.every((id) => checks.some((check) => check.block.id === id && check.obstacles.length === 0));

function asFound(
  order: number,
  module: Module,
  present: ModuleKind | undefined,
  demand: Demand,
  checks: readonly BlockCheck[],
): Option {
  const enabledBefore = present === undefined ? undefined : settingFound(module, present);
  const isDead = module.isDead === true;
  const effect = isDead ? { dims: [], spoiled: [], value: 0 } : effectOf(demand, checks, enabledBefore ?? []);
  // Where the setting cannot be read, a load that was asked to stay steady is not known to be steady: its wish counts as lost, as if it dimmed.
  const inDoubt =
    isDead || enabledBefore !== undefined
      ? []
      : unique(checks.flatMap((check) => check.spoils)).filter(
          (load) => demand.wishes.get(load)?.wish === "must-stay-steady",
        );
  return {
    module,
    order,
    present,
    kind: present,
    isReplaced: false,
    isTouched: false,
    enabledBefore,
    enables: enabledBefore ?? [],
    fuses: [],
    ...effect,
    inDoubt,
    value: inDoubt.reduce((value, load) => value - (demand.wishes.get(load)?.value ?? 0), effect.value),
    minutes: 0,
    key: "as found",
  };
}

const keyOf = (kind: ModuleKind, enables: readonly DimBlockId[]): string =>
  `${kind.id}[${[...enables].sort().join(" ")}]`;

function touchedOption(
  policy: FullPolicy,
  found: Option,
  kind: ModuleKind,
  enables: readonly DimBlockId[],
  fuses: readonly FuseChange[],
  isReplaced: boolean,
  effect: Effect,
): Option {
  return {
    ...found,
    kind,
    isReplaced,
    isTouched: true,
    enables,
    fuses,
    inDoubt: [],
    ...effect,
    minutes:
      (isReplaced ? wholeMinutes(kind.installMin) : wholeMinutes(policy.bankSettingMin)) +
      fuses.length * wholeMinutes(policy.fuseChangeMin),
    key: keyOf(kind, enables),
  };
}

/** Options that differ only in what they enable: keep the settings that no other of the same work beats, fewest blocks first. */
function dedupe(options: readonly Option[]): Option[] {
  const seen = new Set<string>();
  return [...options]
    .sort((a, b) => a.enables.length - b.enables.length || (a.key < b.key ? -1 : a.key > b.key ? 1 : 0))
    .filter((option) => {
      if (seen.has(option.key)) return false;
      seen.add(option.key);
      return true;
    });
}

/**
 * What can be done with this position? Leave it as found; set the bank of the present module anew; fit another kind with one of its settings.
 * A locked module is left; a dead one is changed wherever anything may be fitted; a module of unknown kind is left, since what fits it is not known.
 */
export function positionOf(
  index: CoachIndex,
  policy: FullPolicy,
  demand: Demand,
  module: Module,
  order: number,
): Position {
  const present = module.kind === undefined ? undefined : index.moduleKinds.get(module.kind);
  const loads = channelLoadsOf(index, policy, module);
  const isLocked = module.isLocked === true || demand.locked.has(module.id);
  const isDead = module.isDead === true;
  const blocks = new Map<string, readonly BlockCheck[]>();
  const blocksOf = (kind: ModuleKind): readonly BlockCheck[] => {
    const known = blocks.get(kind.id);
    if (known !== undefined || present === undefined) return known ?? [];
    const made = (kind.dimBlocks ?? []).map((block) => checkBlock(index, demand, kind, block, loads, present.channels));
    blocks.set(kind.id, made);
    return made;
  };
  const candidates: Candidate[] = [];
  if (present !== undefined)
    for (const kind of index.moduleKinds.values())
      if (kind.id !== present.id || isDead)
        candidates.push(candidateOf(index, policy, demand, module, present, kind, loads));
  const found = asFound(order, module, present, demand, present === undefined ? [] : blocksOf(present));
  const touched: Option[] = [];
  if (!isLocked && present !== undefined) {
    if (!isDead && (present.dimBlocks ?? []).length > 0)
      for (const enables of settingsOf(present, blocksOf(present))) {
        const isAsFound = found.enabledBefore !== undefined && sameBlocks(enables, found.enabledBefore);
        if (!isAsFound && blockIsKnown(blocksOf(present), enables))
          touched.push(
            touchedOption(policy, found, present, enables, [], false, effectOf(demand, blocksOf(present), enables)),
          );
      }
    for (const candidate of candidates)
      if (candidate.obstacles.length === 0)
        for (const enables of settingsOf(candidate.kind, blocksOf(candidate.kind)))
          if (blockIsKnown(blocksOf(candidate.kind), enables))
            touched.push(
              touchedOption(
                policy,
                found,
                candidate.kind,
                enables,
                candidate.fuses,
                true,
                effectOf(demand, blocksOf(candidate.kind), enables),
              ),
            );
  }
  const replacing = touched.filter((option) => option.isReplaced);
  const keepsDead = isDead && replacing.length === 0;
  const options = dedupe(isDead && !keepsDead ? replacing : [found, ...touched]);
  return { module, present, isLocked, loads, candidates, blocksOf, options, keepsDead };
}
