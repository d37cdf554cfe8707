import type { ModuleChoice, Plan } from "../plan/index.js";
import type { CoachIndex } from "../record/index.js";
import { loadCautions } from "./load-cautions.js";
import { given, makeStep } from "./make-step.js";
import { circuitName } from "./names.js";
import type { Step } from "./procedure.js";
import type { WireWork } from "./wire-work.js";

/** Detectors anywhere on the coach: the whole coach goes dead, so all of them lose their feed, not only those on touched modules. */
export const detectorsOf = (index: CoachIndex) => [...index.loads.values()].filter((load) => load.class === "detector");

/** Before anything is opened: what is there is photographed and noted, the owner knows, parts and tools lie ready. */
export function prepareSteps(before: CoachIndex, plan: Plan, worked: readonly ModuleChoice[], work: WireWork): Step[] {
  const steps: Step[] = [];
  for (const choice of worked) {
    const module = before.modules.get(choice.module);
    steps.push(
      makeStep(
        `photograph-${choice.module}`,
        "photograph",
        given({ positionsFound: module?.positionsFound, place: module?.place, serial: module?.serial }),
        { module: choice.module },
      ),
    );
    const labels = (before.circuitsOfModule.get(choice.module) ?? []).map(
      (circuit) =>
        `${circuit.channel ?? "?"}: ${circuit.label === undefined ? "not on record" : circuit.label === "" ? "no label" : circuit.label}`,
    );
    steps.push(
      makeStep(`read-labels-${choice.module}`, "read-labels", given({ labels: labels.join("; ") || undefined }), {
        module: choice.module,
      }),
    );
  }
  steps.push(makeStep("note-what-is-on", "note-what-is-on"));
  const wired = new Set<string>(work.jobs.map((job) => job.circuit));
  const isOnTouched = (module: string | undefined) =>
    worked.some((choice) => choice.isTouched && choice.module === module);
  const dead = [...before.circuits.values()]
    .filter((circuit) => circuit.isSpare !== true && (isOnTouched(circuit.module) || wired.has(circuit.id)))
    .map((circuit) => circuitName(before, circuit));
  steps.push(
    makeStep("tell-owner", "tell-owner", given({ circuits: dead.join(", ") || undefined, minutes: plan.minutes })),
  );
  const detectors = detectorsOf(before);
  if (detectors.length > 0) {
    const ids = new Set<string>(detectors.map((load) => load.id));
    const circuits = [...before.circuits.values()].filter((circuit) => (circuit.loads ?? []).some((id) => ids.has(id)));
    const said = loadCautions(before, circuits).filter((one) => one.code === "life-safety");
    steps.push(
      makeStep(
        "detectors-lose-feed",
        "detectors-lose-feed",
        { detectors: detectors.map((load) => load.name).join(", ") },
        {
          cautions:
            said.length > 0
              ? said
              : [{ code: "life-safety", parameters: { loads: detectors.map((load) => load.name).join(", ") } }],
        },
      ),
    );
  }
  steps.push(
    makeStep("lay-out-parts", "lay-out-parts", {
      modules: worked.filter((choice) => choice.isReplaced).length,
    }),
  );
  steps.push(makeStep("lay-out-tools", "lay-out-tools"));
  return steps;
}
