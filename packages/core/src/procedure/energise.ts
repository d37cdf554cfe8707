import type { ModuleChoice } from "../plan/index.js";
import { figureValue, spanOf } from "../quantity/index.js";
import type { CoachIndex, ModuleKind, Supply } from "../record/index.js";
import { batteryCautions, batteryReading, feedReading } from "./battery-volts.js";
import { fittedDead, isHeld } from "./fuse-fitting.js";
import { isolationOrder } from "./isolate.js";
import { loadCautions } from "./load-cautions.js";
import { caution, given, makeStep } from "./make-step.js";
import { byPlace } from "./names.js";
import type { Caution, ExpectedReading, Step } from "./procedure.js";
import { energiseWireSteps, fusesHeldBack, programSteps } from "./wire-energise.js";
import type { WireWork } from "./wire-work.js";

/** A kind's lamps as its own sheet explains them. */
const lampsOf = (kind: ModuleKind | undefined): string[] =>
  (kind?.lamps ?? []).map(
    (lamp) => `${lamp.name}${lamp.colour === undefined ? "" : ` (${lamp.colour})`}: ${lamp.meaning}`,
  );

/** One caution for each hazard, the loads of all of them together. */
function joined(cautions: readonly Caution[]): Caution[] {
  const loads = new Map<Caution["code"], Set<string>>();
  for (const one of cautions)
    loads.set(one.code, (loads.get(one.code) ?? new Set()).add(String(one.parameters.loads ?? "")));
  return [...loads].map(([code, names]) => caution(code, { loads: [...names].join(", ") }));
}

function moduleSteps(after: CoachIndex, choice: ModuleChoice): Step[] {
  const { module } = choice;
  const circuits = after.circuitsOfModule.get(module) ?? [];
  const cautions = loadCautions(after, circuits);
  if (isHeld(choice))
    return [
      makeStep(`energise-${module}`, "energise-held", { needs: choice.positionsNeed.join(", ") }, { module, cautions }),
    ];
  const feedNode = after.modules.get(module)?.feedNode;
  const feed = feedReading(after, feedNode);
  const kind = after.moduleKinds.get(choice.to);
  return [
    makeStep(`feed-${module}`, "feed-module", given({ feedNode, dropMaxV: feed?.dropMaxV }), {
      module,
      expect: feed === undefined ? [] : [feed.reading],
      expectLamps: lampsOf(kind),
      cautions: loadCautions(after, fittedDead(after, choice)),
    }),
    makeStep(
      `energise-${module}`,
      "energise-module",
      { fuses: circuits.filter((circuit) => circuit.fuse !== undefined).length },
      { module, cautions, expectLamps: lampsOf(kind).filter((lamp) => /channel/i.test(lamp)) },
    ),
  ];
}

function supplyStep(after: CoachIndex, supply: Supply): Step {
  const expect: ExpectedReading[] =
    supply.outputV === undefined
      ? []
      : [
          {
            what: `${after.nodes.get(supply.node ?? "")?.name ?? supply.name}, once it charges`,
            unit: "V",
            nominal: figureValue(supply.outputV),
            span: spanOf(supply.outputV, "voltage"),
          },
        ];
  const { isolation } = supply;
  return makeStep(
    `energise-${supply.id}`,
    "energise-supply",
    given({ supply: supply.id, kind: supply.kind, what: isolation?.what, place: isolation?.place ?? supply.place }),
    {
      expect,
      cautions: [
        ...(supply.kind === "charger" ? [caution("mains-nearby", { what: supply.name })] : []),
        ...(supply.kind === "alternator" ? [caution("engine-or-generator-may-start", { loads: supply.name })] : []),
      ],
    },
  );
}

/**
 * Power back in stages: the battery alone, with the fuses of the touched modules and of moved wires out; then the controller's program after its wires; then each touched
 * module's feed and lamps, and its fuses, one at a time, while somebody watches its loads; then moved wires on the other modules; the charging sources last, in the
 * reverse of the order in which they were opened.
 */
export function energiseSteps(
  before: CoachIndex,
  after: CoachIndex,
  touched: readonly ModuleChoice[],
  work: WireWork,
): Step[] {
  const order = isolationOrder(after).reverse();
  const batteries = order.filter((supply) => supply.kind === "battery");
  const ids = new Set<string>(touched.map((choice) => choice.module));
  const heldBack = fusesHeldBack(after, touched, work);
  // With the battery everything else comes alive at once: the untouched modules and the plain fuses, and whatever has its fuse in already.
  const others = [
    ...[...after.circuits.values()].filter(
      (circuit) => (circuit.module === undefined || !ids.has(circuit.module)) && !heldBack.has(circuit.id),
    ),
    ...touched.filter((choice) => !isHeld(choice)).flatMap((choice) => fittedDead(after, choice)),
  ];
  const steps: Step[] = [makeStep("clear-away", "clear-away")];
  for (const battery of batteries)
    steps.push(
      makeStep(
        `energise-${battery.id}`,
        "energise-battery",
        given({ supply: battery.id, what: battery.isolation?.what, place: battery.isolation?.place ?? battery.place }),
        {
          expect: [batteryReading(after, battery)],
          cautions: [...batteryCautions(battery), ...joined(loadCautions(after, others))],
        },
      ),
    );
  steps.push(...programSteps(before, work, touched));
  for (const choice of byPlace(after, touched)) steps.push(...moduleSteps(after, choice));
  steps.push(...energiseWireSteps(before, after, touched, work));
  for (const supply of order) if (supply.kind !== "battery") steps.push(supplyStep(after, supply));
  return steps;
}
