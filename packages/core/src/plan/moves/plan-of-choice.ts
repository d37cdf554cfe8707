import type { DimBlockId, LoadId, ModuleId } from "../../record/index.js";
import { loadObstacle } from "../block-check.js";
import { type ChoiceMemory, makePlan, type WireWork } from "../make-plan.js";
import { type Option, settingFound } from "../option.js";
import type { CircuitMove, FuseChange, Plan, Rewire, SteadyFeed, UnmetWish } from "../plan.js";
import { type GivenChannels, givenChannels } from "./given-channels.js";
import type { GroundCircuit } from "./ground.js";
import { rewireCents } from "./placings-of.js";
import type { Choice, Placing } from "./problem.js";
import type { RecordProblem } from "./problem-of.js";
import { placingAt } from "./score.js";

/** One circuit of the problem with where it sits. */
interface Seated {
  readonly circuit: GroundCircuit;
  readonly placing: Placing;
  readonly home: number;
  readonly given: GivenChannels[number];
}

function seatedOf(problem: RecordProblem, choice: Choice): Seated[] {
  const given = givenChannels(problem, choice);
  return problem.circuits.flatMap((each, c) => {
    const circuit = problem.source.grounds[each.home]?.circuits.find((own) => own.on.circuit.id === each.circuit);
    const placing = placingAt(problem, choice, c);
    return circuit === undefined || placing === undefined
      ? []
      : [{ circuit, placing, home: each.home, given: given[c] }];
  });
}

/** Where each channel is set as needed: the blocks of the channels that dim. */
function enabledBlocks(
  problem: RecordProblem,
  choice: Choice,
  m: number,
  seated: readonly Seated[],
): readonly DimBlockId[] {
  const at = problem.source.patterns[m]?.[choice.patterns[m] ?? -1];
  const ground = problem.source.grounds[m];
  if (at === undefined || ground === undefined || !at.pattern.isFree || at.kind === undefined)
    return at?.pattern.enables ?? [];
  const { kind } = at;
  const dimmed = new Set(
    seated.flatMap((each) => (each.placing.isDimmed && each.given?.module === m ? [each.given.channel] : [])),
  );
  const worth = new Set(ground.blocksOf(kind).flatMap((check) => (check.dims.length > 0 ? [check.block.id] : [])));
  return (kind.dimBlocks ?? [])
    .filter(
      (block) =>
        at.pattern.enables.includes(block.id) &&
        (worth.has(block.id) || block.channels.some((channel) => dimmed.has(channel))),
    )
    .map((block) => block.id);
}

function optionsOf(problem: RecordProblem, choice: Choice, seated: readonly Seated[]): Option[] {
  return problem.source.grounds.flatMap((ground, m): Option[] => {
    const at = problem.source.patterns[m]?.[choice.patterns[m] ?? -1];
    if (at === undefined) return [];
    const { pattern } = at;
    const here = seated.filter((each) => (each.placing.module ?? each.home) === m).map((each) => each.placing);
    const enables = enabledBlocks(problem, choice, m, seated);
    return [
      {
        module: ground.module,
        order: ground.order,
        present: ground.present,
        kind: at.kind,
        isReplaced: pattern.isReplaced,
        isTouched: pattern.isTouched,
        enabledBefore: ground.present === undefined ? undefined : settingFound(ground.module, ground.present),
        enables,
        fuses: pattern.fuses,
        dims: [...pattern.dims, ...here.flatMap((placing) => placing.dims)],
        spoiled: [...pattern.spoiled, ...here.flatMap((placing) => placing.spoiled)],
        inDoubt: [...pattern.inDoubt, ...here.flatMap((placing) => placing.inDoubt)],
        value: here.reduce((sum, placing) => sum + placing.value, pattern.value),
        minutes: pattern.minutes,
        key: pattern.isTouched ? `${pattern.kind}[${[...enables].sort().join(" ")}]` : pattern.key,
      },
    ];
  });
}

function wireWorkOf(problem: RecordProblem, choice: Choice, seated: readonly Seated[]): WireWork {
  const { basis, grounds, checks } = problem.source;
  const moves: CircuitMove[] = [];
  const steadyFeeds: SteadyFeed[] = [];
  const rewires: Rewire[] = [];
  const fuses: FuseChange[] = [];
  const modules = new Set<ModuleId>();
  const needs = new Set<string>();
  let minutes = 0;
  let partsCents = 0;
  for (const { circuit, placing, home, given } of seated) {
    const { on, relief } = circuit;
    const from = { module: grounds[home]?.module.id as ModuleId, channel: on.channel };
    const isRelieved = placing.steady.length > 0;
    minutes += placing.minutes;
    if (placing.wiresMoved > 0) modules.add(from.module);
    if (placing.isMoved && given !== undefined) {
      const to = { module: grounds[given.module]?.module.id as ModuleId, channel: given.channel };
      modules.add(to.module);
      moves.push({ circuit: on.circuit.id, from, to });
    }
    const kind =
      given === undefined
        ? undefined
        : problem.source.patterns[given.module]?.[choice.patterns[given.module] ?? -1]?.kind;
    if (kind !== undefined && (placing.changesFuse || placing.isRewired)) {
      const fit = checks.of(kind, isRelieved && relief !== undefined ? relief.rest : on).fuse;
      if (fit?.change !== undefined) fuses.push(fit.change);
      if (fit?.rewire !== undefined && placing.isRewired) {
        rewires.push(fit.rewire);
        partsCents += rewireCents(basis, on);
        if (basis.policy.rewirePartsPerM === undefined) needs.add("policy.rewirePartsPerM");
      }
    }
    if (!isRelieved || relief === undefined) continue;
    for (const feed of relief.feeds)
      steadyFeeds.push({ load: feed.load.id, circuit: on.circuit.id, from, node: feed.node, fuseA: feed.fuseA });
    partsCents += relief.feeds.length * Math.round((basis.policy.steadyFeedParts ?? 0) * 100);
    if (basis.policy.steadyFeedParts === undefined) needs.add("policy.steadyFeedParts");
  }
  const freed = new Map<string, number>();
  problem.modules.forEach((module, m) => {
    const kind = problem.parts[module.patterns[choice.patterns[m] ?? -1]?.frees ?? -1]?.kind;
    if (kind !== undefined) freed.set(kind, (freed.get(kind) ?? 0) + 1);
  });
  return { moves, steadyFeeds, rewires, fuses, minutes, partsCents, modules: [...modules], freed, needs: [...needs] };
}

/** Wishes this plan does not meet; of the rules that stop them only what lies in the load itself. */
function unmetOf(problem: RecordProblem, dims: readonly LoadId[], unsteady: readonly LoadId[]): UnmetWish[] {
  const { index, demand } = problem.source.basis;
  const unmet: UnmetWish[] = [];
  for (const wish of demand.wishes.values()) {
    const load = index.loads.get(wish.load);
    const isMet = wish.wish === "must-stay-steady" ? !unsteady.includes(wish.load) : dims.includes(wish.load);
    if (isMet || load === undefined) continue;
    const own = wish.wish === "must-stay-steady" ? undefined : loadObstacle(demand, load);
    unmet.push({ load: wish.load, stoppedBy: own === undefined ? [] : [own] });
  }
  return unmet;
}

/**
 * The plan that a choice stands for: channel by channel, with fuses, switches, parts, labour and minutes. `unmet` names in `stoppedBy` only what lies in the load
 * itself; `whyNot` finds the rest.
 */
export function planOfChoice(problem: RecordProblem, choice: Choice, memory: ChoiceMemory = new Map()): Plan {
  const { basis, money } = problem.source;
  const seated = seatedOf(problem, choice);
  const options = optionsOf(problem, choice, seated);
  const bare = makePlan(basis.index, money, options, memory, wireWorkOf(problem, choice, seated));
  const unsteady = options.flatMap((option) => [...option.spoiled, ...option.inDoubt]);
  const unmet = unmetOf(problem, bare.dims, unsteady);
  const mustsLeft = unmet.filter((each) => basis.demand.wishes.get(each.load)?.wish !== "nice-to-dim").length;
  return { ...bare, unmet, mustsLeft };
}
