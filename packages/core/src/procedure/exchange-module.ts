import type { ModuleChoice, Plan } from "../plan/index.js";
import type { CoachIndex, ModuleId } from "../record/index.js";
import { fittedDead, isHeld } from "./fuse-fitting.js";
import { caution, given, makeStep } from "./make-step.js";
import type { Reuse } from "./parts-list.js";
import { pinMapOf } from "./pin-map.js";
import type { Step } from "./procedure.js";
import { labelChannelsStep, labelWireSteps, unplugSteps } from "./wire-steps.js";
import type { WireWork } from "./wire-work.js";

/** The steps at one module: what comes out, what goes in, and what waits for its wires. Where nothing is awaited they follow each other at once. */
export interface ModuleSteps {
  readonly out: readonly Step[];
  readonly in: readonly Step[];
  readonly closing: readonly Step[];
}

function bankStep(choice: ModuleChoice, found: string | undefined, address: number | undefined): Step {
  const id = `set-bank-${choice.module}`;
  const module = choice.module;
  if (choice.positions === undefined)
    return makeStep(id, "set-bank-unknown", { needs: choice.positionsNeed.join(", ") }, { module });
  if (choice.positions === "") return makeStep(id, "no-bank", given({ address }), { module });
  return makeStep(
    id,
    "set-bank",
    given({
      positions: choice.positions,
      found: choice.isReplaced ? undefined : found,
      address,
      enables: choice.enables.join(", ") || undefined,
    }),
    { module },
  );
}

/** Out with the old part, its bank set, in with the new one. */
function replacing(
  before: CoachIndex,
  after: CoachIndex,
  choice: ModuleChoice,
  wires: readonly Step[],
  reused: ModuleId | undefined,
): ModuleSteps {
  const { module } = choice;
  const at = { module };
  const found = before.modules.get(module);
  const toKind = after.moduleKinds.get(choice.to);
  const fromKind = choice.from === undefined ? undefined : before.moduleKinds.get(choice.from);
  const unplug = fromKind?.connectors?.map((connector) => connector.name).join(", ");
  const plug = toKind?.connectors
    ?.map((connector) =>
      connector.keyedAt === undefined ? connector.name : `${connector.name} (keyed at the ${connector.keyedAt})`,
    )
    .join(", ");
  const map = toKind === undefined ? undefined : pinMapOf(fromKind, toKind);
  const electronic = toKind?.output === undefined || toKind.output !== "relay";
  return {
    out: [
      makeStep(`mark-connectors-${module}`, "mark-connectors", given({ connectors: unplug }), at),
      makeStep(`take-fuses-${module}`, "take-fuses", {}, at),
      makeStep(`remove-${module}`, "remove-module", given({ from: choice.from, feedNode: found?.feedNode }), at),
      ...wires,
    ],
    in: [
      bankStep(choice, found?.positionsFound, found?.address),
      makeStep(
        `fit-${module}`,
        "fit-module",
        given({ to: choice.to, feedNode: isHeld(choice) ? undefined : found?.feedNode, reusedFrom: reused }),
        {
          ...at,
          cautions: electronic ? [caution("static", { module: found?.name ?? module })] : [],
        },
      ),
    ],
    closing: isHeld(choice)
      ? [makeStep(`hold-feed-${module}`, "hold-feed", {}, at)]
      : [
          makeStep(
            `seat-harness-${module}`,
            "seat-harness",
            given({
              connectors: plug,
              pinMapRows: map?.length,
              unknownPins: map?.filter((row) => row.unknown.length > 0).length,
            }),
            at,
          ),
        ],
  };
}

/** What is done at one module, touched itself or only with a wire that comes or goes. */
export function exchangeModule(
  before: CoachIndex,
  after: CoachIndex,
  plan: Plan,
  choice: ModuleChoice,
  work: WireWork,
  reuse: readonly Reuse[],
): ModuleSteps {
  const { module } = choice;
  const at = { module };
  const labels = labelWireSteps(before, after, work, module);
  const wires = unplugSteps(before, after, work, choice);
  const channels = labelChannelsStep(after, work, module);
  const screws = makeStep(`check-screws-${module}`, "check-screws", {}, at);
  if (!choice.isTouched) return { out: [...labels, ...wires], in: [], closing: [...channels, screws] };
  const circuits = new Set<string>(
    [...(before.circuitsOfModule.get(module) ?? []), ...(after.circuitsOfModule.get(module) ?? [])].map(
      (circuit) => circuit.id,
    ),
  );
  const changes = plan.fuses.filter((change) => circuits.has(change.circuit)).length;
  const sort = makeStep(
    `sort-fuses-${module}`,
    "sort-fuses",
    { changes, screwed: fittedDead(after, choice).length },
    at,
  );
  const label = makeStep(`label-${module}`, "label-module", { isReplaced: choice.isReplaced ? 1 : 0 }, at);
  const closing = [sort, ...channels, label, screws];
  if (choice.isReplaced) {
    const reused = reuse.find((each) => each.at === module)?.from;
    const steps = replacing(before, after, choice, wires, reused);
    return { ...steps, out: [...labels, ...steps.out], closing: [...steps.closing, ...closing] };
  }
  const found = before.modules.get(module);
  return {
    out: [...labels, makeStep(`take-fuses-${module}`, "take-fuses", {}, at), ...wires],
    in: [
      bankStep(choice, found?.positionsFound, found?.address),
      ...(isHeld(choice) ? [makeStep(`hold-feed-${module}`, "hold-feed", {}, at)] : []),
    ],
    closing,
  };
}
