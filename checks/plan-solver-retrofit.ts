import type { Milp } from "@fusebook/core/plan";
import { chanceOf } from "@fusebook/fixtures";
import type { PlanInstance } from "./plan-instance.js";
import { ModelMaker } from "./plan-solver-models.js";

/** How far a wire may go: not at all, to any channel of its own module, or to the modules beside it as well. */
export type Reach = "fixed" | "within" | "neighbour";

/** What a moved wire costs in the synthetic instances. */
const LABOUR = { within: 40, neighbour: 120 } as const;

/** Which block a channel (from 1) of a module with `channels` belongs to; kinds without blocks, or with one block for each channel, have one bucket. */
function blockOf(groups: string, channel: number, channels: number): number {
  const parts = groups === "halves" ? 2 : groups === "thirds" ? 3 : 1;
  return Math.min(parts - 1, Math.floor(((channel - 1) * parts) / channels));
}

/**
 * A synthetic retrofit as a model of its own, written for the checks and not from the planner's: one yes-or-no for each module and kind, one for each block's mode,
 * one for each load in each bucket (module, kind, block, mode). `weighted`: least of price and labour less the value of what dims; a number: the least price and
 * labour with at least that value.
 */
export function retrofitModel(instance: PlanInstance, reach: Reach, objective: "weighted" | number): Milp {
  const make = new ModelMaker(`${instance.name}-${reach}`);
  const value: [column: number, value: number][] = [];
  const amps: [number, number][][] = instance.modules.map(() => []);
  const placed: [number, number][][] = instance.loads.map(() => []);
  instance.modules.forEach((module, m) => {
    const kinds = instance.kinds.map((kind) => {
      const price = kind.id === module.kind ? 0 : kind.price + (kind.groups === "none" ? 60 : 0);
      return { kind, chosen: make.whole(`kind_${m}_${kind.id}`, price) };
    });
    make.row(
      `one_kind_${m}`,
      1,
      kinds.map(({ chosen }) => [chosen, 1] as const),
      1,
    );
    for (const { kind, chosen } of kinds) {
      amps[m]?.push([chosen, -kind.totalA]);
      const parts = kind.groups === "halves" ? 2 : kind.groups === "thirds" ? 3 : 1;
      for (let block = 0; block < parts; block++) {
        const size = Array.from({ length: module.channels }, (_, i) =>
          blockOf(kind.groups, i + 1, module.channels),
        ).filter((each) => each === block).length;
        const isFlat = kind.groups === "none" || kind.groups === "each";
        const modes = isFlat
          ? { dims: chosen, switches: chosen }
          : {
              dims: make.whole(`dims_${m}_${kind.id}_${block}`, 0),
              switches: make.whole(`switches_${m}_${kind.id}_${block}`, 0),
            };
        if (!isFlat)
          make.row(
            `mode_${m}_${kind.id}_${block}`,
            0,
            [
              [modes.dims, 1],
              [modes.switches, 1],
              [chosen, -1],
            ],
            0,
          );
        const inside = { dims: [] as number[], switches: [] as number[] };
        instance.loads.forEach((load, l) => {
          const isHome = load.module === m && (isFlat || blockOf(kind.groups, load.channel, module.channels) === block);
          if (reach === "fixed" ? !isHome : Math.abs(load.module - m) > (reach === "within" ? 0 : 1)) return;
          const labour = isHome ? 0 : load.module === m ? LABOUR.within : LABOUR.neighbour;
          const both: [number, number][] = [];
          for (const mode of ["dims", "switches"] as const) {
            if (load.currentA > (mode === "dims" ? kind.dimmedA : kind.switchedA)) continue;
            if (mode === "dims" && (!load.mayDim || kind.groups === "none")) continue;
            const gain = mode === "dims" ? load.value : 0;
            const column = make.whole(
              `x_${l}_${m}_${kind.id}_${block}_${mode}`,
              labour - (objective === "weighted" ? gain : 0),
            );
            if (gain > 0) value.push([column, gain]);
            inside[mode].push(column);
            placed[l]?.push([column, 1]);
            amps[m]?.push([column, load.currentA]);
            if (isFlat) both.push([column, 1]);
            else
              make.row(
                `link_${l}_${m}_${kind.id}_${block}_${mode}`,
                -Infinity,
                [
                  [column, 1],
                  [modes[mode], -1],
                ],
                0,
              );
          }
          if (isFlat && both.length > 0) make.row(`link_${l}_${m}_${kind.id}`, -Infinity, [...both, [chosen, -1]], 0);
        });
        const slots = (name: string, members: readonly number[], by: number) =>
          make.row(name, -Infinity, [...members.map((column) => [column, 1] as const), [by, -size]], 0);
        if (isFlat) slots(`slots_${m}_${kind.id}`, [...inside.dims, ...inside.switches], chosen);
        else
          for (const mode of ["dims", "switches"] as const)
            slots(`slots_${m}_${kind.id}_${block}_${mode}`, inside[mode], modes[mode]);
      }
    }
  });
  for (const [l, terms] of placed.entries()) make.row(`place_${l}`, 1, terms, 1);
  for (const [m, terms] of amps.entries()) make.row(`amps_${m}`, -Infinity, terms, 0);
  if (objective !== "weighted") make.row("value", objective, value, Infinity);
  return make.milp;
}

/** A seeded retrofit of two or three small modules. */
export function seededRetrofit(seed: number): PlanInstance {
  const chance = chanceOf(seed);
  const modules = Array.from({ length: chance.whole(2, 3) }, () => ({
    channels: chance.pick([4, 6]),
    kind: chance.is(0.7) ? "K0" : "K2",
  }));
  return {
    name: `retrofit-${seed}`,
    kinds: [
      { id: "K0", groups: "none", price: 0, switchedA: 15, dimmedA: 0, totalA: 40 },
      { id: "K1", groups: "all", price: 220, switchedA: 12, dimmedA: 8, totalA: 30 },
      { id: "K2", groups: "halves", price: 300, switchedA: 12, dimmedA: 8, totalA: 30 },
      { id: "K4", groups: "each", price: 520, switchedA: 12, dimmedA: 10, totalA: 35 },
    ],
    modules,
    loads: modules.flatMap(({ channels }, module) =>
      Array.from({ length: channels }, (_, i) => i + 1).flatMap((channel) => {
        if (!chance.is(0.85)) return [];
        const mayDim = chance.is(0.6);
        const currentA = mayDim ? chance.between(0.3, 3.5, 1) : chance.between(1, 7, 1);
        return [{ module, channel, currentA, mayDim, value: mayDim && chance.is(0.7) ? 60 * chance.whole(1, 4) : 0 }];
      }),
    ),
  };
}
