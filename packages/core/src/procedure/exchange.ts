import type { ModuleChoice, Plan } from "../plan/index.js";
import type { Circuit, CoachIndex } from "../record/index.js";
import { caution, given, makeStep } from "./make-step.js";
import { byPlace, placesToOpen } from "./names.js";
import { pinMapOf } from "./pin-map.js";
import type { Caution, Step } from "./procedure.js";

/** Fuses that are screwed or wired in: they go in while the coach is dead, so their loads get power with the feed. */
const isScrewedIn = (type: string | undefined): boolean =>
  type === "bolt-down" || type === "cartridge" || type === "fusible-link";

/** Circuits of a module whose fuse is not fitted by hand under the eye, one at a time, but goes in dead. */
export const fittedDead = (index: CoachIndex, choice: ModuleChoice): Circuit[] =>
  (index.circuitsOfModule.get(choice.module) ?? []).filter((circuit) =>
    isScrewedIn(circuit.fuse?.type ?? index.moduleKinds.get(choice.to)?.fuseType),
  );

export const isHeld = (choice: ModuleChoice): boolean => choice.positions === undefined;

/** Mains wiring, or a box that has it, where the hand works. */
function placeCautions(index: CoachIndex, place: string): Caution[] {
  const mains = [...index.supplies.values()].filter(
    (supply) => supply.kind === "charger" && (supply.place === place || supply.isolation?.place === place),
  );
  return mains.length === 0 ? [] : [caution("mains-nearby", { what: mains.map((supply) => supply.name).join(", ") })];
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

function moduleSteps(before: CoachIndex, after: CoachIndex, plan: Plan, choice: ModuleChoice): Step[] {
  const { module } = choice;
  const found = before.modules.get(module);
  const toKind = after.moduleKinds.get(choice.to);
  const fromKind = choice.from === undefined ? undefined : before.moduleKinds.get(choice.from);
  const circuits = new Set<string>((before.circuitsOfModule.get(module) ?? []).map((circuit) => circuit.id));
  const changes = plan.fuses.filter((change) => circuits.has(change.circuit)).length;
  const at = { module };
  const screwed = fittedDead(after, choice).length;
  const take = makeStep(`take-fuses-${module}`, "take-fuses", {}, at);
  const sort = makeStep(`sort-fuses-${module}`, "sort-fuses", { changes, screwed }, at);
  const bank = bankStep(choice, found?.positionsFound, found?.address);
  const hold = isHeld(choice) ? [makeStep(`hold-feed-${module}`, "hold-feed", {}, at)] : [];
  if (!choice.isReplaced)
    return [
      take,
      bank,
      ...hold,
      sort,
      makeStep(`label-${module}`, "label-module", { isReplaced: 0 }, at),
      makeStep(`check-screws-${module}`, "check-screws", {}, at),
    ];
  const unplug = fromKind?.connectors?.map((connector) => connector.name).join(", ");
  const plug = toKind?.connectors
    ?.map((connector) =>
      connector.keyedAt === undefined ? connector.name : `${connector.name} (keyed at the ${connector.keyedAt})`,
    )
    .join(", ");
  const map = toKind === undefined ? undefined : pinMapOf(fromKind, toKind);
  const electronic = toKind?.output === undefined || toKind.output !== "relay";
  return [
    makeStep(`mark-connectors-${module}`, "mark-connectors", given({ connectors: unplug }), at),
    take,
    makeStep(`remove-${module}`, "remove-module", given({ from: choice.from, feedNode: found?.feedNode }), at),
    bank,
    makeStep(
      `fit-${module}`,
      "fit-module",
      given({ to: choice.to, feedNode: isHeld(choice) ? undefined : found?.feedNode }),
      {
        ...at,
        cautions: electronic ? [caution("static", { module: found?.name ?? module })] : [],
      },
    ),
    ...(isHeld(choice)
      ? hold
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
        ]),
    sort,
    makeStep(`label-${module}`, "label-module", { isReplaced: 1 }, at),
    makeStep(`check-screws-${module}`, "check-screws", {}, at),
  ];
}

/** The work itself, place by place, each opened once; every bank is set before its module is fitted. */
export function exchangeSteps(
  before: CoachIndex,
  plan: Plan,
  after: CoachIndex,
  touched: readonly ModuleChoice[],
): Step[] {
  const steps: Step[] = [];
  const opened = new Set<string>();
  const open = (place: string | undefined) => {
    for (const each of placesToOpen(before, place))
      if (!opened.has(each)) {
        opened.add(each);
        steps.push(
          makeStep(
            `open-place-${each}`,
            "open-place",
            given({ place: each, reachedBy: before.places.get(each)?.reachedBy }),
            {
              cautions: placeCautions(before, each),
            },
          ),
        );
      }
  };
  const done = new Set<string>();
  for (const choice of byPlace(before, touched)) {
    open(before.modules.get(choice.module)?.place);
    done.add(choice.module);
    steps.push(...moduleSteps(before, after, plan, choice));
  }
  for (const change of plan.fuses) {
    const circuit = before.circuits.get(change.circuit);
    if (circuit?.module !== undefined && done.has(circuit.module)) continue;
    open(before.modules.get(circuit?.module ?? "")?.place);
    steps.push(
      makeStep(`change-fuse-${change.circuit}`, "change-fuse", given({ fromA: change.fromA, toA: change.toA }), {
        circuit: change.circuit,
      }),
    );
  }
  return steps;
}
