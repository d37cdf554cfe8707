import type { SupplyWiring } from "./coach-network.js";
import type { Draft } from "./draft.js";
import { Reach } from "./reach.js";
import { LEAST_OHM } from "./series.js";
import type { CoachState } from "./state.js";
import { batteryFigures, regulatedFigures, type SupplyInputs } from "./supply-figures.js";

const isSwitchedOn = (kind: string, state: CoachState): boolean =>
  kind === "battery" ||
  (kind === "charger" && state.chargerOn === true) ||
  (kind === "alternator" && state.engineOn === true);

/** Lays the supplies that are on in this state, batteries first, and what each can reach. `needs` are the fields for want of which one was left out. */
export function laySupplies(draft: Draft): { supplies: SupplyWiring[]; needs: string[] } {
  const { index, state, nominalV, recordNodes, edges, edgesAt } = draft;
  const wanted = [...index.supplies.values()].filter((supply) => isSwitchedOn(supply.kind, state));
  const ordered = [
    ...wanted.filter((supply) => supply.kind === "battery"),
    ...wanted.filter((supply) => supply.kind !== "battery"),
  ];
  const supplies: SupplyWiring[] = [];
  const supplyNeeds: string[] = [];
  for (const supply of ordered) {
    const path = index.pathOf("supplies", supply.id);
    const positive = draft.nodeAt(supply.node);
    const negative = draft.nodeAt(supply.returnNode);
    const needs: string[] = [];
    if (positive === undefined) needs.push(`${path}.node`);
    if (negative === undefined) needs.push(`${path}.returnNode`);
    let supplyBranch = -1;
    let supplyLoad = -1;
    let inputs: SupplyInputs | undefined;
    if (positive !== undefined && negative !== undefined) {
      if (supply.kind === "battery") {
        const found = batteryFigures(supply, state, nominalV, path);
        draft.finder.assumed.push(...found.assumed);
        inputs = found.inputs;
        const span = { lo: Math.max(LEAST_OHM, found.ohm.span.lo), hi: Math.max(LEAST_OHM, found.ohm.span.hi) };
        supplyBranch = draft.branch(
          negative,
          positive,
          { ohm: Math.max(LEAST_OHM, found.ohm.value), span },
          found.emf.value,
          found.emf.span,
        );
      } else {
        const found = regulatedFigures(supply, path);
        if (found.kind === "known") {
          draft.finder.assumed.push(...found.value.assumed);
          inputs = found.value.inputs;
          supplyLoad = draft.load(positive, negative, found.value.nominal, found.value.strongest, found.value.weakest);
        } else if (found.kind === "missing") needs.push(...found.needs);
      }
    }
    for (const need of needs) draft.leftOut.add(need);
    supplyNeeds.push(...needs);
    if (positive === undefined || negative === undefined || inputs === undefined) continue;
    const toFeeds = new Reach(positive, recordNodes, edges, edgesAt);
    const toReturns = new Reach(negative, recordNodes, edges, edgesAt);
    supplies.push({
      supply,
      path,
      positive,
      negative,
      branch: supplyBranch,
      load: supplyLoad,
      inputs,
      toFeeds,
      toReturns,
    });
  }
  return { supplies, needs: supplyNeeds };
}
