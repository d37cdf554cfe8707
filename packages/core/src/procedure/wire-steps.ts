import type { ModuleChoice, Plan } from "../plan/index.js";
import { figureValue } from "../quantity/index.js";
import type { Circuit, CoachIndex, ModuleId } from "../record/index.js";
import { isScrewedIn } from "./fuse-fitting.js";
import { caution, given, makeStep } from "./make-step.js";
import { circuitName } from "./names.js";
import type { Step } from "./procedure.js";
import { emptied, type WireJob, type WireWork } from "./wire-work.js";

/** Names a job among the steps: a feed by its load, all else by its circuit. */
export const jobKey = (job: WireJob): string => (job.kind === "feed" ? (job.load ?? job.circuit) : job.circuit);

/** One job for each wire that comes off: a circuit that is moved and rewired comes off once. */
const unplugged = (work: WireWork, module: ModuleId): WireJob[] => {
  const seen = new Set<string>();
  return work.jobs.filter((job) => {
    if (job.from?.module !== module || seen.has(jobKey(job))) return false;
    seen.add(jobKey(job));
    return true;
  });
};

const ratedA = (circuit: Circuit | undefined): number | undefined =>
  circuit?.fuse?.ratedA === undefined ? undefined : figureValue(circuit.fuse.ratedA);

/** The pins of a channel by the sheet of the kind that is there, as "X1 pin 8". */
function pinsOf(index: CoachIndex, module: string | undefined, channel: number | undefined): string | undefined {
  const kind = index.moduleKinds.get(index.modules.get(module ?? "")?.kind ?? "");
  const pins = (kind?.connectors ?? []).flatMap((connector) =>
    connector.pins.filter((pin) => pin.channel === channel).map((pin) => `${connector.name} pin ${pin.pin}`),
  );
  return pins.length === 0 ? undefined : pins.join(", ");
}

const whereOf = (before: CoachIndex, after: CoachIndex, job: WireJob) =>
  given({
    what: job.load === undefined ? nameOf(before, job) : (before.loads.get(job.load)?.name ?? job.load),
    circuitName: nameOf(before, job),
    fromModule: job.from?.module,
    fromChannel: job.from?.channel,
    fromPins: pinsOf(before, job.from?.module, job.from?.channel),
    toModule: job.to?.module,
    toChannel: job.to?.channel,
    toPins: pinsOf(after, job.to?.module, job.to?.channel),
  });

const nameOf = (index: CoachIndex, job: WireJob): string => {
  const circuit = index.circuits.get(job.circuit);
  return circuit === undefined ? job.circuit : circuitName(index, circuit);
};

/** Every wire that comes off this module gets its label first: what it is, where it sat, where it goes. */
export const labelWireSteps = (before: CoachIndex, after: CoachIndex, work: WireWork, module: ModuleId): Step[] =>
  unplugged(work, module).map((job) =>
    makeStep(
      `label-wire-${jobKey(job)}`,
      "label-wire",
      { ...whereOf(before, after, job), kind: job.kind },
      { module, circuit: job.circuit },
    ),
  );

/** The labelled wires come off, their ends covered, their fuses kept with them. */
export const unplugSteps = (
  before: CoachIndex,
  after: CoachIndex,
  work: WireWork,
  { module, isTouched }: ModuleChoice,
): Step[] =>
  unplugged(work, module).map((job) => {
    const circuit = before.circuits.get(job.circuit);
    const shares = job.kind === "feed" && (circuit?.loads ?? []).some((load) => load !== job.load);
    return makeStep(
      `unplug-wire-${jobKey(job)}`,
      "unplug-wire",
      {
        ...whereOf(before, after, job),
        ...given({
          fuseA: ratedA(circuit),
          shares: shares ? 1 : undefined,
          // All fuses of a touched module are out by then.
          fuseIsOut: isTouched ? 1 : undefined,
        }),
      },
      { module, circuit: job.circuit },
    );
  });

function moveStep(before: CoachIndex, after: CoachIndex, job: WireJob): Step {
  const circuit = after.circuits.get(job.circuit);
  return makeStep(
    `move-wire-${job.circuit}`,
    "move-wire",
    {
      ...whereOf(before, after, job),
      ...given({
        fuseA: ratedA(circuit),
        fuseFromA: ratedA(before.circuits.get(job.circuit)),
        screwed: isScrewedIn(after, circuit) ? 1 : undefined,
      }),
    },
    { ...(job.to === undefined ? {} : { module: job.to.module }), circuit: job.circuit },
  );
}

function rewireStep(before: CoachIndex, after: CoachIndex, plan: Plan, job: WireJob): Step {
  const circuit = after.circuits.get(job.circuit);
  const rewire = plan.rewires.find((each) => each.circuit === job.circuit);
  const lengthM = circuit?.out?.lengthM;
  return makeStep(
    `rewire-${job.circuit}`,
    "rewire",
    {
      ...whereOf(before, after, job),
      ...given({
        fromGauge: rewire?.fromGauge,
        toGauge: rewire?.toGauge,
        areaMm2: rewire?.toAreaMm2,
        lengthM: lengthM === undefined ? undefined : figureValue(lengthM),
        fuseA: ratedA(circuit),
        fuseFromA: ratedA(before.circuits.get(job.circuit)),
        screwed: isScrewedIn(after, circuit) ? 1 : undefined,
      }),
    },
    {
      ...(job.to === undefined ? {} : { module: job.to.module }),
      circuit: job.circuit,
      cautions: [caution("hidden-lines", { what: nameOf(before, job) })],
    },
  );
}

function feedStep(before: CoachIndex, after: CoachIndex, plan: Plan, job: WireJob): Step {
  const feed = plan.steadyFeeds.find((each) => each.load === job.load);
  return makeStep(
    `steady-feed-${jobKey(job)}`,
    "steady-feed",
    { ...whereOf(before, after, job), ...given({ node: feed?.node, fuseA: feed?.fuseA }) },
    {
      ...(job.from === undefined ? {} : { module: job.from.module }),
      circuit: job.circuit,
      cautions: [caution("hidden-lines", { what: before.loads.get(job.load ?? "")?.name ?? jobKey(job) })],
    },
  );
}

/** Every wire to its new place, module by module in the order given, channel by channel; feeds of their own last. Every place is open and every wire is off by then. */
export function fitWireSteps(
  before: CoachIndex,
  after: CoachIndex,
  plan: Plan,
  work: WireWork,
  order: readonly ModuleId[],
): Step[] {
  const rewired = new Set(work.jobs.filter((job) => job.kind === "rewire").map((job) => job.circuit));
  const rank = (id: ModuleId | undefined): number => {
    const at = id === undefined ? -1 : order.indexOf(id);
    return at < 0 ? order.length : at;
  };
  const ending = work.jobs
    .filter((job) => job.kind === "rewire" || (job.kind === "move" && !rewired.has(job.circuit)))
    .sort((a, b) => rank(a.to?.module) - rank(b.to?.module) || (a.to?.channel ?? 0) - (b.to?.channel ?? 0));
  return [
    ...ending.map((job) =>
      job.kind === "rewire" ? rewireStep(before, after, plan, job) : moveStep(before, after, job),
    ),
    ...work.jobs.filter((job) => job.kind === "feed").map((job) => feedStep(before, after, plan, job)),
  ];
}

/** A wire that the plan names and that feeds a detector stays where it is. */
export const detectorSteps = (before: CoachIndex, work: WireWork): Step[] =>
  [...new Map(work.detectors.map((job) => [jobKey(job), job])).values()].map((job) =>
    makeStep(
      `leave-detector-${jobKey(job)}`,
      "leave-detector",
      { what: nameOf(before, job) },
      { circuit: job.circuit, cautions: [caution("life-safety", { loads: nameOf(before, job) })] },
    ),
  );

/** The channels of one module whose wires changed, labelled as they are now; a channel without a wire is labelled spare. */
export function labelChannelsStep(after: CoachIndex, work: WireWork, module: ModuleId): Step[] {
  const spare = emptied(work, after)
    .filter((each) => each.module === module)
    .map(({ channel }) => channel)
    .sort((a, b) => a - b);
  const taken = work.jobs
    .flatMap((job) => (job.to?.module === module ? [job.to.channel] : []))
    .filter((channel, i, all) => all.indexOf(channel) === i)
    .sort((a, b) => a - b);
  if (spare.length === 0 && taken.length === 0) return [];
  return [
    makeStep(
      `label-channels-${module}`,
      "label-channels",
      given({ spare: spare.join(", ") || undefined, taken: taken.join(", ") || undefined }),
      { module },
    ),
  ];
}
