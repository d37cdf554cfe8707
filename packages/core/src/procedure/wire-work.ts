import type { ChannelOf, ModuleChoice, Plan } from "../plan/index.js";
import type { Circuit, CircuitId, CoachIndex, LoadId, ModuleId } from "../record/index.js";

/** One piece of work at a wire: it goes to another channel, a load of it gets a fused feed of its own, or it is replaced by a thicker one. */
export interface WireJob {
  readonly kind: "move" | "feed" | "rewire";
  readonly circuit: CircuitId;
  /** Where it is unplugged; undefined: a plain fuse that is on no module. */
  readonly from: ChannelOf | undefined;
  /** Where it goes: of a move the new channel, of a rewired circuit the one it ends on; of a feed none. */
  readonly to: ChannelOf | undefined;
  readonly load?: LoadId;
}

/** All work at wires that a plan asks for, in the order of the plan. */
export interface WireWork {
  readonly jobs: readonly WireJob[];
  /** Circuits that a plan names and that feed a detector: they are left alone, whatever the plan says. */
  readonly detectors: readonly WireJob[];
  /** Modules at which a wire is unplugged or fitted, touched otherwise or not. */
  readonly modules: ReadonlySet<ModuleId>;
}

const channelOf = (circuit: Circuit | undefined): ChannelOf | undefined =>
  circuit?.module === undefined || circuit.channel === undefined
    ? undefined
    : { module: circuit.module, channel: circuit.channel };

/** Does this circuit feed a detector? */
export const feedsDetector = (index: CoachIndex, circuit: Circuit | undefined): boolean =>
  (circuit?.loads ?? []).some((id) => index.loads.get(id)?.class === "detector");

/** What is to be done at which wire. `before`: the coach as found. */
export function wireWorkOf(before: CoachIndex, plan: Plan): WireWork {
  const moved = new Map(plan.moves.map((move) => [move.circuit, move]));
  const all: WireJob[] = [
    ...plan.moves.map((move): WireJob => ({ kind: "move", ...move })),
    ...plan.steadyFeeds.map(
      (feed): WireJob => ({ kind: "feed", circuit: feed.circuit, from: feed.from, to: undefined, load: feed.load }),
    ),
    ...plan.rewires.map((rewire): WireJob => {
      const from = channelOf(before.circuits.get(rewire.circuit));
      return { kind: "rewire", circuit: rewire.circuit, from, to: moved.get(rewire.circuit)?.to ?? from };
    }),
  ];
  const isDetector = (job: WireJob): boolean =>
    feedsDetector(before, before.circuits.get(job.circuit)) ||
    (job.load !== undefined && before.loads.get(job.load)?.class === "detector");
  const jobs = all.filter((job) => !isDetector(job));
  return {
    jobs,
    detectors: all.filter(isDetector),
    modules: new Set(jobs.flatMap((job) => [job.from?.module, job.to?.module].filter((id) => id !== undefined))),
  };
}

/** Modules at which hands work, those touched and those where only a wire is unplugged or fitted: each with what the plan does to it. */
export function workedOn(before: CoachIndex, plan: Plan, work: WireWork): ModuleChoice[] {
  const listed = new Set(plan.modules.map((choice) => choice.module));
  const unlisted = [...work.modules]
    .filter((id) => !listed.has(id))
    .flatMap((id): ModuleChoice[] => {
      const kind = before.modules.get(id)?.kind;
      return kind === undefined
        ? []
        : [
            {
              module: id,
              from: kind,
              to: kind,
              isReplaced: false,
              isTouched: false,
              enabledBefore: undefined,
              enables: [],
              positions: before.modules.get(id)?.positionsFound,
              positionsNeed: [],
            },
          ];
    });
  return [...plan.modules.filter((choice) => choice.isTouched || work.modules.has(choice.module)), ...unlisted];
}

/** Channels that a wire leaves and none takes: to be labelled spare. */
export function emptied(work: WireWork, after: CoachIndex): ChannelOf[] {
  const left = work.jobs.flatMap((job) => (job.kind === "rewire" || job.from === undefined ? [] : [job.from]));
  const seen = new Set<string>();
  return left.filter(({ module, channel }) => {
    const key = `${module} ${channel}`;
    if (seen.has(key)) return false;
    seen.add(key);
    const there = (after.circuitsOfModule.get(module) ?? []).find((circuit) => circuit.channel === channel);
    return there === undefined || there.isSpare === true;
  });
}
