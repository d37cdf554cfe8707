import type { ModuleChoice } from "../plan/index.js";
import { figureValue } from "../quantity/index.js";
import type { Circuit, CoachIndex } from "../record/index.js";
import { isHeld, isScrewedIn } from "./fuse-fitting.js";
import { loadCautions } from "./load-cautions.js";
import { given, makeStep } from "./make-step.js";
import { circuitName } from "./names.js";
import type { Step } from "./procedure.js";
import type { WireJob, WireWork } from "./wire-work.js";

/** Which circuit a job leaves behind: of a feed the new one of its load, else the circuit itself. `after`: the coach as the plan leaves it. */
const circuitAfter = (after: CoachIndex, job: WireJob): Circuit | undefined =>
  job.kind === "feed" ? after.circuitOfLoad.get(job.load ?? "") : after.circuits.get(job.circuit);

/** Jobs whose fuse is fitted by itself: those that end on no module that is brought back fuse by fuse, and whose fuse is not screwed in. */
function ownFuse(after: CoachIndex, touched: readonly ModuleChoice[], work: WireWork): WireJob[] {
  const staged = new Set<string>(touched.filter((choice) => choice.isTouched).map((choice) => choice.module));
  const seen = new Set<string>();
  return work.jobs.filter((job) => {
    const circuit = circuitAfter(after, job);
    if (job.kind !== "feed" && job.to !== undefined && staged.has(job.to.module)) return false;
    if (circuit === undefined || isScrewedIn(after, circuit) || seen.has(circuit.id)) return false;
    seen.add(circuit.id);
    return true;
  });
}

/** Circuits whose fuse stays out until it is their turn, on modules that come alive with the battery. */
export const fusesHeldBack = (
  after: CoachIndex,
  touched: readonly ModuleChoice[],
  work: WireWork,
): ReadonlySet<string> =>
  new Set(
    ownFuse(after, touched, work).flatMap((job) => {
      const circuit = circuitAfter(after, job);
      return circuit === undefined ? [] : [circuit.id];
    }),
  );

/** The controller's program follows each wire before the wire gets power: its buttons must find it on the new channel. */
export function programSteps(before: CoachIndex, work: WireWork, touched: readonly ModuleChoice[]): Step[] {
  const held = new Set<string>(touched.filter(isHeld).map((choice) => choice.module));
  return work.jobs
    .filter((job) => job.kind === "move" && !held.has(job.to?.module ?? ""))
    .map((job) => {
      const circuit = before.circuits.get(job.circuit);
      const controls = [...before.controls.values()].filter((control) =>
        (control.does ?? []).some((each) => (each.circuits ?? []).includes(job.circuit)),
      );
      return makeStep(
        `change-program-${job.circuit}`,
        "change-program",
        given({
          what: circuit === undefined ? job.circuit : circuitName(before, circuit),
          fromModule: job.from?.module,
          fromChannel: job.from?.channel,
          toModule: job.to?.module,
          toChannel: job.to?.channel,
          controls: controls.map((control) => control.name).join(", ") || undefined,
        }),
        { circuit: job.circuit },
      );
    });
}

/** The fuses of moved, rewired and newly fed circuits on modules that are live already, one at a time, with somebody at the load. */
export function energiseWireSteps(
  before: CoachIndex,
  after: CoachIndex,
  touched: readonly ModuleChoice[],
  work: WireWork,
): Step[] {
  return ownFuse(after, touched, work).map((job) => {
    const circuit = circuitAfter(after, job) as Circuit;
    const fuseA = circuit.fuse?.ratedA;
    const isFeed = job.kind === "feed";
    return makeStep(
      isFeed ? `energise-feed-${job.load}` : `energise-circuit-${job.circuit}`,
      isFeed ? "energise-feed" : "energise-circuit",
      given({
        what: isFeed
          ? (after.loads.get(job.load ?? "")?.name ?? job.load)
          : circuitName(before, before.circuits.get(circuit.id) ?? circuit),
        toModule: job.to?.module,
        toChannel: job.to?.channel,
        fuseA: fuseA === undefined ? undefined : figureValue(fuseA),
      }),
      {
        ...(job.to === undefined ? {} : { module: job.to.module }),
        circuit: circuit.id,
        cautions: loadCautions(after, [circuit]),
      },
    );
  });
}
