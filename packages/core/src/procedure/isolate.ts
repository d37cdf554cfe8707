import type { ModuleChoice } from "../plan/index.js";
import type { CoachIndex, Supply } from "../record/index.js";
import { batteriesOf, batteryCautions, batteryReading, DEAD_MAX_V } from "./battery-volts.js";
import { caution, given, makeStep } from "./make-step.js";
import type { Caution, ExpectedReading, Step } from "./procedure.js";

/** Charging sources before the battery, so that none of them feeds the coach alone; the mains one first. Common practice, no source. */
const RANK: Readonly<Record<Supply["kind"], number>> = { charger: 0, solar: 1, alternator: 2, battery: 3 };

/** Supplies in the order in which they are opened; bringing power back goes the other way. */
export const isolationOrder = (index: CoachIndex): Supply[] =>
  [...index.supplies.values()].sort((a, b) => RANK[a.kind] - RANK[b.kind]);

export const hasIsolation = (supply: Supply): boolean => (supply.isolation?.what.trim() ?? "") !== "";

function cautionsOf(supply: Supply): Caution[] {
  if (supply.kind === "charger") return [caution("mains-nearby", { what: supply.name })];
  return supply.kind === "battery" ? batteryCautions(supply) : [];
}

function isolateStep(supply: Supply): Step {
  const isolation = supply.isolation;
  return hasIsolation(supply)
    ? makeStep(
        `isolate-${supply.id}`,
        "isolate-supply",
        given({
          supply: supply.id,
          kind: supply.kind,
          what: isolation?.what,
          place: isolation?.place ?? supply.place,
          how: isolation?.how,
        }),
        { cautions: cautionsOf(supply) },
      )
    : makeStep(
        `isolate-${supply.id}`,
        "isolation-unknown",
        given({ supply: supply.id, kind: supply.kind, place: supply.place }),
        { cautions: cautionsOf(supply) },
      );
}

/** Points that must read dead: the feed of every touched module and every positive bar. */
function deadReadings(index: CoachIndex, touched: readonly ModuleChoice[]): ExpectedReading[] {
  const nodes = new Set<string>();
  for (const choice of touched) {
    const feed = index.modules.get(choice.module)?.feedNode;
    if (feed !== undefined) nodes.add(feed);
  }
  for (const node of index.nodes.values()) if (node.kind === "busbar" && node.rail === "positive") nodes.add(node.id);
  return [...nodes].map((id) => ({
    what: `${index.nodes.get(id)?.name ?? id} to battery negative`,
    unit: "V",
    nominal: 0,
    span: { lo: 0, hi: DEAD_MAX_V },
  }));
}

/** This coach's supplies made dead one after the other, then proved dead with a meter that was itself proved before and after. */
export function isolateSteps(before: CoachIndex, touched: readonly ModuleChoice[]): Step[] {
  const supplies = isolationOrder(before);
  const steps: Step[] = [];
  if (supplies.length === 0) steps.push(makeStep("isolate-none", "no-supply-on-record"));
  const many =
    supplies.length > 1
      ? [
          caution("many-sources", {
            count: supplies.length,
            supplies: supplies.map((supply) => supply.name).join(", "),
          }),
        ]
      : [];
  const charging = supplies.filter((supply) => supply.kind !== "battery").map(isolateStep);
  const batteries = supplies.filter((supply) => supply.kind === "battery").map(isolateStep);
  const starts = [...before.loads.values()].filter((load) => load.class === "inverter-remote");
  if (starts.length > 0) {
    const loads = starts.map((load) => load.name).join(", ");
    steps.push(
      makeStep(
        "remote-starts-off",
        "remote-starts-off",
        { loads },
        {
          cautions: [caution("engine-or-generator-may-start", { loads }), caution("mains-nearby", { what: loads })],
        },
      ),
    );
  }
  steps.push(...charging, makeStep("loads-off", "loads-off"), ...batteries);
  const first = steps.findIndex((step) => step.id.startsWith("isolate-"));
  const opening = steps[first];
  if (opening !== undefined) steps[first] = { ...opening, cautions: [...many, ...opening.cautions] };
  const battery = batteriesOf(before)[0];
  const prove = {
    expect: battery === undefined ? [] : [batteryReading(before, battery)],
    cautions: batteryCautions(battery),
  };
  const unmeasured = touched.filter((choice) => before.modules.get(choice.module)?.feedNode === undefined);
  steps.push(
    makeStep("wait-for-capacitors", "wait-for-capacitors", {}, { cautions: [caution("capacitor-charge")] }),
    makeStep("prove-meter", "prove-meter", {}, prove),
    makeStep(
      "dead-test",
      "dead-test",
      given({ limitV: DEAD_MAX_V, withoutFeed: unmeasured.map((choice) => choice.module).join(",") || undefined }),
      { expect: deadReadings(before, touched), cautions: many },
    ),
    makeStep("prove-meter-again", "prove-meter-again", {}, prove),
  );
  return steps;
}
