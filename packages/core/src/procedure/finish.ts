import type { ModuleChoice } from "../plan/index.js";
import type { CoachIndex } from "../record/index.js";
import { loadCautions } from "./load-cautions.js";
import { given, makeStep } from "./make-step.js";
import { byPlace, placesToOpen } from "./names.js";
import type { Reuse } from "./parts-list.js";
import { detectorsOf } from "./prepare.js";
import type { Step } from "./procedure.js";
import type { WireWork } from "./wire-work.js";

/** The test sheet, with each moving thing seen to move right and each detector heard. */
export function proveSteps(after: CoachIndex, touched: readonly ModuleChoice[], work: WireWork): Step[] {
  const steps = [makeStep("run-tests", "run-tests")];
  const wired = work.jobs.flatMap((job) => {
    const circuit = job.kind === "feed" ? after.circuitOfLoad.get(job.load ?? "") : after.circuits.get(job.circuit);
    return circuit === undefined ? [] : [circuit];
  });
  const circuits = [
    ...new Set([...touched.flatMap((choice) => after.circuitsOfModule.get(choice.module) ?? []), ...wired]),
  ];
  const cautions = loadCautions(after, circuits).filter((one) => one.code !== "life-safety");
  if (cautions.length > 0) steps.push(makeStep("watch-movers", "watch-movers", {}, { cautions }));
  const detectors = detectorsOf(after);
  if (detectors.length > 0) {
    const loads = detectors.map((load) => load.name).join(", ");
    steps.push(
      makeStep(
        "test-detectors",
        "test-detectors",
        { loads },
        { cautions: [{ code: "life-safety", parameters: { loads } }] },
      ),
    );
  }
  return steps;
}

/** Everything closed, labelled, handed over and written down. */
export function closeSteps(after: CoachIndex, touched: readonly ModuleChoice[], reuse: readonly Reuse[]): Step[] {
  const steps: Step[] = [];
  const places: string[] = [];
  for (const choice of byPlace(after, touched)) {
    steps.push(makeStep(`covers-${choice.module}`, "refit-covers", {}, { module: choice.module }));
    for (const place of placesToOpen(after, after.modules.get(choice.module)?.place))
      if (!places.includes(place)) places.push(place);
  }
  for (const choice of touched) {
    steps.push(makeStep(`check-labels-${choice.module}`, "check-labels", {}, { module: choice.module }));
    if (choice.isReplaced && !reuse.some((each) => each.from === choice.module))
      steps.push(
        makeStep(`keep-old-${choice.module}`, "keep-old-part", given({ from: choice.from }), { module: choice.module }),
      );
  }
  for (const place of places.reverse()) steps.push(makeStep(`close-place-${place}`, "close-place", { place }));
  steps.push(
    makeStep("set-back", "set-back"),
    makeStep("write-book", "write-book"),
    makeStep("show-owner", "show-owner"),
  );
  return steps;
}
