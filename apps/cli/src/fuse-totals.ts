import { type CoachTotals, DEMAND_FACTORS, type StateTotals } from "@fusebook/core/protection";
import { type Figure, figureValue, type Outcome, type Span, type UnitChoice } from "@fusebook/core/quantity";
import type { CoachIndex } from "@fusebook/core/record";
import { columns } from "./columns.js";
import { amps, ampsSpan } from "./fuse-words.js";

type Known = Outcome<{ readonly nominal: number; readonly span: Span }>;

/** Below this a current is the rounding of a solve. */
const NOTHING_A = 1e-6;

function currentText(found: Known, units: UnitChoice): string {
  if (found.kind !== "known") return "?";
  const { nominal, span } = found.value;
  return span.hi < NOTHING_A ? "0 A" : ampsSpan(nominal, span, units);
}

const ratedText = (ratedA: Figure | undefined, units: UnitChoice): string =>
  ratedA === undefined ? "?" : amps(figureValue(ratedA), units);

/** Modules, feeders and bars in both named states, and each module's demand. */
export function totalsText(index: CoachIndex, totals: CoachTotals, units: UnitChoice, width: number): string {
  const { busy, allOn, demand } = totals;
  const heads = ["", busy.state, allOn.state, "may carry", ""];
  const modules = busy.modules.map(({ id, currentA, ratedA }, n) => {
    const own = demand.get(id);
    const connected =
      own?.kind === "known"
        ? `${amps(own.value.connectedA, units)} connected, demand ${amps(own.value.demandA, units)}`
        : "demand ?";
    const name = index.modules.get(id as never)?.name ?? id;
    return [
      name,
      currentText(currentA, units),
      currentText(allOn.modules[n]!.currentA, units),
      ratedText(ratedA, units),
      connected,
    ];
  });
  const feeders = busy.feeders.map(({ id, currentA, ampacity, deviceA }, n) => {
    const carries = ampacity.kind === "known" ? amps(ampacity.value.ampacityA, units) : "?";
    const device = deviceA === undefined ? "no device on record" : `device ${ratedText(deviceA, units)}`;
    const name = index.cables.get(id as never)?.name ?? id;
    return [name, currentText(currentA, units), currentText(allOn.feeders[n]!.currentA, units), carries, device];
  });
  const bars = busy.bars.map(({ id, currentA, ratedA }, n) => [
    index.nodes.get(id as never)?.name ?? id,
    currentText(currentA, units),
    currentText(allOn.bars[n]!.currentA, units),
    ratedText(ratedA, units),
    "",
  ]);
  const factors = DEMAND_FACTORS.map(({ sort, ratio }) => `${sort} ${ratio}`).join(", ");
  return [
    columns([heads, ...modules, ...feeders, ...bars], width),
    `Demand factors (common practice, no source): ${factors}; of what moves, the greatest in full.`,
    "? : not told; a load, a wire or a rating is not on record.",
  ].join("\n");
}

const told = (found: Known) =>
  found.kind === "known" ? { kind: "known", currentA: found.value.nominal, span: found.value.span } : found;

const stateJson = ({ state, modules, feeders, bars }: StateTotals) => ({
  state,
  modules: modules.map(({ id, currentA, ratedA }) => ({ id, current: told(currentA), ratedA: ratedA ?? null })),
  feeders: feeders.map(({ id, currentA, ampacity, deviceA }) => ({
    id,
    current: told(currentA),
    ampacityA: ampacity.kind === "known" ? ampacity.value.ampacityA : null,
    deviceA: deviceA ?? null,
  })),
  bars: bars.map(({ id, currentA, ratedA }) => ({ id, current: told(currentA), ratedA: ratedA ?? null })),
});

/** The same under stable keys. */
export const totalsJson = ({ busy, allOn, demand }: CoachTotals) => ({
  states: [busy, allOn].map(stateJson),
  demand: [...demand].map(([module, found]) => ({
    module,
    ...(found.kind === "known" ? { kind: found.kind, ...found.value } : found),
  })),
});
