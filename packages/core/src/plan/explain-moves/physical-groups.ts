import { suitabilityOf } from "../../dimming/index.js";
import type { Circuit, CoachIndex, Load, ModuleKind, ModuleKindId } from "../../record/index.js";
import { policyOf } from "../../record/index.js";
import { loadObstacle } from "../block-check.js";
import { channelLoadsOf } from "../channel-load.js";
import type { Demand } from "../demand.js";
import {
  type Asked,
  type Supposing,
  withAnotherCircuit,
  withAnotherKind,
  withCable,
  withCircuit,
  withKind,
  withLoad,
  withNode,
  withWish,
} from "./asked.js";
import type { Near } from "./near.js";
import { type PlanGroup, planGroup } from "./plan-group.js";

/** A fact that no plan can change, and how the question would read were it otherwise. Only ever supposed, to name it: never released. */
export interface PhysicalGroup {
  readonly group: PlanGroup;
  readonly lift: Supposing;
}

/** Above anything a coach carries. */
const NO_LIMIT_A = 1000;

const MADE_DIMMABLE: Partial<Load> = {
  class: "led-resistor",
  allowsPwm: undefined,
  pwmEvidence: undefined,
  hasOwnSwitch: undefined,
  ownSwitchKind: undefined,
};

function ofLoads(demand: Demand, loads: readonly Load[]): PhysicalGroup[] {
  return loads.flatMap((load) => {
    const obstacle = loadObstacle(demand, load);
    if (obstacle === undefined) return [];
    const { may, code } = suitabilityOf(load);
    const isWished = demand.wishes.get(load.id)?.wish === "must-stay-steady";
    const why = may === "yes" && isWished ? "wished-steady" : code;
    const group = may === "yes" || may === "no" ? "load-must-not-dim" : "load-not-known";
    const dimmable = withLoad(load.id, (each) => ({ ...each, ...MADE_DIMMABLE }));
    const unasked = withWish(load.id, "nice-to-dim", 0.001);
    return [
      {
        group: planGroup("physical", group, load.id, { load: load.id, name: load.name, why }),
        lift: (asked) => dimmable(isWished ? unasked(asked) : asked),
      },
    ];
  });
}

function ofCircuits(index: CoachIndex, near: Near): PhysicalGroup[] {
  const groups: PhysicalGroup[] = [];
  const policy = policyOf(index.record);
  const everyModule = [...index.modules.values()].map((each) => each.id);
  for (const module of near.modules) {
    for (const on of channelLoadsOf(index, policy, module)) {
      const { circuit } = on;
      if (on.isUnknown || on.needs.length > 0)
        groups.push({
          group: planGroup("physical", "current-unknown", circuit.id, {
            circuit: circuit.id,
            need: on.needs[0] ?? "",
          }),
          lift: (asked) =>
            on.loads
              .map((load) => withLoad(load.id, (each) => ({ ...each, currentA: 0.001, powerW: undefined })))
              .reduce((so, suppose) => suppose(so), on.isUnknown ? asSpare(circuit)(asked) : asked),
        });
      if ((circuit.loads ?? []).length === 0) continue;
      groups.push({
        group: planGroup("physical", "reach", circuit.id, { circuit: circuit.id }),
        lift: withCircuit(circuit.id, (each) => ({ ...each, reach: everyModule.filter((id) => id !== module.id) })),
      });
      if (circuit.canMove === false)
        groups.push({
          group: planGroup("physical", "program-fixed", circuit.id, { circuit: circuit.id }),
          lift: withCircuit(circuit.id, (each) => ({ ...each, canMove: true })),
        });
    }
    const present = module.kind === undefined ? undefined : index.moduleKinds.get(module.kind);
    const listed = new Set((index.circuitsOfModule.get(module.id) ?? []).map((circuit) => circuit.channel));
    for (let channel = 1; channel <= (present?.channels ?? 0); channel++)
      if (!listed.has(channel))
        groups.push({
          group: planGroup("physical", "channel-not-recorded", `${module.id} ${channel}`, {
            module: module.id,
            channel,
          }),
          lift: withAnotherCircuit({
            id: `${module.id} channel ${channel} supposed spare`,
            module: module.id,
            channel,
            isSpare: true,
          } as Circuit),
        });
  }
  return groups;
}

const asSpare = (circuit: Circuit): Supposing =>
  withCircuit(circuit.id, (each) => ({ ...each, loads: [], isSpare: true }));

/** The kind with every channel a dim block of its own: fitted beside the real one, so that what stands is still read as it is. */
const anyChannelOf = (kind: ModuleKind): ModuleKind =>
  ({
    ...kind,
    id: `${kind.id} any channel` as ModuleKindId,
    fitsInPlaceOf: [...new Set([...(kind.fitsInPlaceOf ?? []), kind.id])],
    bank: undefined,
    dimBlocks: Array.from({ length: kind.channels }, (_, i) => ({ id: `any ${i + 1}`, channels: [i + 1] })),
  }) as ModuleKind;

function ofKind(index: CoachIndex, kind: ModuleKind): PhysicalGroup[] {
  const at = { kind: kind.id, kindName: kind.name };
  const group = (code: PlanGroup["code"]) => planGroup("physical", code, kind.id, at);
  const hasDimming = (kind.dimBlocks ?? []).length > 0;
  const every = [...index.moduleKinds.values()].map((each) => each.id);
  return [
    { group: group("kind-blocks"), lift: withAnotherKind(anyChannelOf(kind)) },
    ...(hasDimming
      ? [
          {
            group: group("dimmed-rating"),
            lift: withKind(kind.id, (each) => ({ ...each, ratedDimmedA: NO_LIMIT_A })),
          },
        ]
      : []),
    { group: group("switched-rating"), lift: withKind(kind.id, (each) => ({ ...each, ratedSwitchedA: NO_LIMIT_A })) },
    { group: group("total-rating"), lift: withKind(kind.id, (each) => ({ ...each, ratedTotalA: NO_LIMIT_A })) },
    { group: group("channel-fuse-limit"), lift: withKind(kind.id, (each) => ({ ...each, maxFuseA: NO_LIMIT_A })) },
    {
      group: group("kind-does-not-fit"),
      lift: withKind(kind.id, (each) => ({ ...each, fitsInPlaceOf: every, side: undefined })),
    },
    ...(kind.isObtainable === false || kind.price === undefined
      ? [
          {
            group: group("kind-not-to-be-had"),
            lift: withKind(kind.id, (each) => ({ ...each, isObtainable: true, price: each.price ?? 0 })),
          },
        ]
      : []),
  ];
}

/** One fact for each control with a fixed program: were it not fixed, the circuits it works might move, unless somebody said that they do not. */
function ofControls(index: CoachIndex, near: Near): PhysicalGroup[] {
  return [...index.controls.values()]
    .filter((control) => control.program === "fixed")
    .flatMap((control) => {
      const worked = new Set((control.does ?? []).flatMap((does) => does.circuits ?? []));
      const here = near.circuits.filter((circuit) => worked.has(circuit.id));
      if (here.length === 0) return [];
      const move = here
        .filter((circuit) => circuit.canMove === undefined)
        .map((circuit) => withCircuit(circuit.id, (each) => ({ ...each, canMove: true })));
      const edited: Supposing = ({ record, job }) => ({
        job,
        record: {
          ...record,
          controls: (record.controls ?? []).map((each) =>
            each.id === control.id ? { ...each, program: "editable" as const } : each,
          ),
        },
      });
      return [
        {
          group: planGroup("physical", "control-fixed", control.id, { control: control.id, name: control.name }),
          lift: (asked: Asked) => move.reduce((so, suppose) => suppose(so), edited(asked)),
        },
      ];
    });
}

/** Every node and cable that has a limit of its own. */
function ofFeeders(index: CoachIndex): PhysicalGroup[] {
  const nodes = [...index.nodes.values()].filter((node) => node.ratedA !== undefined);
  return [
    ...nodes.map(({ id, name }) => ({
      group: planGroup("physical", "feeder-limit", `node ${id}`, { node: id, name: name ?? id }),
      lift: withNode(id, (each) => ({ ...each, ratedA: undefined })),
    })),
    ...[...index.cables.values()].map(({ id, name }) => ({
      group: planGroup("physical", "feeder-limit", `cable ${id}`, { cable: id, name: name ?? id }),
      lift: withCable(id, (each) => ({ ...each, kind: "bar" as const, protection: undefined })),
    })),
  ];
}

/** Which a reader understands best, first: what stands first stays named where there is a choice. */
const ORDER: readonly PlanGroup["code"][] = [
  "load-must-not-dim",
  "load-not-known",
  "current-unknown",
  "channel-not-recorded",
  "kind-blocks",
  "dimmed-rating",
  "switched-rating",
  "total-rating",
  "channel-fuse-limit",
  "kind-does-not-fit",
  "kind-not-to-be-had",
  "feeder-limit",
  "control-fixed",
  "program-fixed",
  "reach",
];

/** Every fact near the load that a conflict may name: loads and circuits of the modules in reach, kinds, feeders. What a reader understands best stands first. */
export function physicalGroupsOf(index: CoachIndex, demand: Demand, near: Near): PhysicalGroup[] {
  const loads = near.circuits.flatMap((circuit) => (circuit.loads ?? []).flatMap((id) => index.loads.get(id) ?? []));
  const groups = [
    ...ofLoads(demand, [...new Set(loads)]),
    ...ofCircuits(index, near),
    ...[...index.moduleKinds.values()].flatMap((kind) => ofKind(index, kind)),
    ...ofFeeders(index),
    ...ofControls(index, near),
  ];
  return groups.sort((a, b) => ORDER.indexOf(a.group.code) - ORDER.indexOf(b.group.code));
}
