import type { CircuitDimming, LoadDimming, LoadFlicker, ModuleDimming } from "@fusebook/core/dimming";
import { dimmingWhy } from "@fusebook/core/findings";
import { figureValue, midOf } from "@fusebook/core/quantity";
import type { CoachIndex, ModuleKind } from "@fusebook/core/record";
import { columns, wrap } from "./columns.js";
import { currentsText, driverText, kindRampsText, lightText, rampText } from "./dim-tables.js";
import { amps, ampsOf, lacking, percent, percents } from "./dim-words.js";
import type { Units } from "./records.js";

const MAY = { yes: "yes", no: "NO", "only-if": "only if", unknown: "not known" } as const;
const KEEPS = { holds: "keeps", fails: "EXCEEDS", open: "may exceed" } as const;
const limitWords = (limit: number | undefined): string =>
  limit === undefined ? "no limit here" : `limit ${percent(limit)}`;

const FILTER = {
  none: "nothing filters it",
  thermal: "its heat filters",
  capacitor: "its capacitor filters",
  unknown: "its filter is not known: taken as none",
} as const;

/** The flicker verdict in a line, with both limits and what the swing is known from. */
export function flickerLine(flicker: LoadFlicker): string {
  const { modulation, modulationRatio, lowRisk, noEffect, lowRiskRatio, noEffectRatio } = flicker;
  const from = modulation.knownFrom === "class" ? " (class figure from memory)" : "";
  return `swings ${percents(modulationRatio)}, ${FILTER[modulation.filter]}${from}; ${KEEPS[lowRisk]} low risk (${limitWords(lowRiskRatio)}), ${KEEPS[noEffect]} no observable effect (${limitWords(noEffectRatio)})`;
}

const SET_BY = {
  module: "the module goes no lower",
  eye: "lower looks dark",
  driver: "lower and its driver stops",
} as const;

const loadName = ({ load, isClassGuessed }: LoadDimming): string =>
  `${load.name}${(load.quantity ?? 1) > 1 ? ` x${load.quantity}` : ""}: ${load.class ?? "sort not known"}${isClassGuessed ? " (guessed from its name)" : ""}`;

function loadLines(load: LoadDimming, width: number): string[] {
  const { suitability, lowest, flicker, fit } = load;
  const why = dimmingWhy(suitability.code);
  const named = suitability.parameters.named;
  const may = load.steady.must === "yes" && suitability.may !== "no" ? "NO" : MAY[suitability.may];
  const lines = [
    `  ${loadName(load)}`,
    `    may it dim:  ${may}: ${load.steady.code === "wished-steady" ? dimmingWhy("wished-steady") : why}${named === undefined ? "" : ` (${String(named)})`}`,
  ];
  const cannot = flicker.kind === "refused" && (flicker.code === "kind-cannot-dim" || flicker.code === "not-on-module");
  if (suitability.may !== "no" && !cannot) {
    lines.push(
      `    flicker:     ${flicker.kind === "known" ? flickerLine(flicker.value) : lacking(flicker)}`,
      `    lowest duty: ${lowest.kind === "known" ? `${percent(lowest.value.dutyRatio)}, looks ${lowest.value.lightness.toFixed(0)} of 100; ${SET_BY[lowest.value.setBy]}` : lacking(lowest)}`,
    );
  }
  if (fit?.kind === "known" && fit.value.kind === "led")
    lines.push(
      `    by readings: ${fit.value.forwardV.span.lo.toFixed(2)} to ${fit.value.forwardV.span.hi.toFixed(2)} V forward, ${fit.value.resistorOhm.span.lo.toFixed(2)} to ${fit.value.resistorOhm.span.hi.toFixed(2)} ohm${fit.value.from === "readings-and-class" ? " (with the class's forward volts, from memory)" : ""}`,
    );
  else if (fit?.kind === "refused")
    lines.push(
      `    by readings: ${fit.code === "reading-too-wide" ? "they say nothing" : "THEY CONTRADICT EACH OTHER"}: ${fit.because}`,
    );
  return lines.flatMap((line) => wrapped(line, width));
}

/** A line with its left edge kept, and the rest of it under where its words began. */
function wrapped(line: string, width: number): string[] {
  const edge = /^\s*(?:[a-z ]+: +)?/.exec(line)?.[0] ?? "";
  const [first, ...rest] = wrap(line.slice(edge.length), Math.max(30, width - edge.length));
  return [edge + (first ?? ""), ...rest.map((each) => " ".repeat(edge.length) + each)];
}

/** What a kind is in a line: frequency, lowest duty, rating. */
export function kindLine(kind: ModuleKind | undefined, units: Units): string {
  if (kind === undefined) return "on no module that is known";
  if (kind.output === "relay") return `on ${kind.name}: switches only, it cannot dim`;
  const figures = [
    kind.pwmHz === undefined ? "PWM frequency not known" : `PWM ${figureValue(kind.pwmHz)} Hz`,
    kind.minDutyRatio === undefined
      ? "lowest duty not known"
      : `lowest duty ${percent(figureValue(kind.minDutyRatio))}`,
    kind.ratedDimmedA === undefined
      ? "dimmed rating not known"
      : `${amps(figureValue(kind.ratedDimmedA), units)} a channel dimmed`,
  ];
  return `on ${kind.name}: ${figures.join(", ")}`;
}

const RATING = { holds: "carries it", fails: "is TOO LITTLE", open: "may be too little" } as const;

function ratingText({ rating }: CircuitDimming, units: Units): string {
  if (rating.kind !== "known") return rating.kind === "missing" ? `Dimmed rating: ${lacking(rating)}` : "";
  const { currentA, ratedDimmedA, verdict } = rating.value;
  return `Dimmed rating ${amps(midOf(ratedDimmedA), units)} ${RATING[verdict]}: ${ampsOf(currentA, units)} in the pulse; dimming does not lower that`;
}

/** Everything of one circuit. */
export function circuitText(
  index: CoachIndex,
  one: CircuitDimming,
  kind: ModuleKind | undefined,
  units: Units,
  width: number,
): string {
  const circuit = index.circuits.get(one.circuit);
  const module = one.module === undefined ? undefined : index.modules.get(one.module);
  const name = circuit?.name ?? circuit?.label ?? one.circuit;
  const where = module === undefined ? "" : ` (${module.name ?? module.id}, channel ${one.channel ?? "?"})`;
  const { may, isMixed, isUnlisted } = one.suitability;
  const verdict = isUnlisted
    ? "not known: the record does not say what hangs on it"
    : one.loads.length === 0
      ? "spare: nothing hangs on it"
      : isMixed
        ? "NO: loads that must stay steady share it with lamps; part them first"
        : MAY[may];
  const parts = [
    `${one.circuit}  ${name}${where}, ${kindLine(kind, units)}${one.block === undefined ? "" : `, block ${one.block}`}`,
    `May the circuit dim: ${verdict}`,
    ...one.loads.map((load) => loadLines(load, width).join("\n")),
    ratingText(one, units),
  ].filter((part) => part !== "");
  const tables =
    may === "no" && !isMixed
      ? []
      : [
          ...lightText(one, width),
          currentsText(one, units, width),
          ...driverText(one, units, width),
          ...(kind === undefined || kind.output === "relay" ? [] : [rampText("Ramp that looks even", one.ramp, width)]),
        ];
  return [parts.join("\n"), ...(one.loads.length === 0 ? [] : tables)].join("\n\n");
}

const BLOCK_MAY = { yes: "may dim", no: "must NOT dim", "only-if": "may dim only if", unknown: "not known" } as const;

/** One line a circuit: what hangs on it, may it dim, flicker, lowest duty. */
export function circuitRows(index: CoachIndex, circuits: readonly CircuitDimming[]): string[][] {
  return circuits.flatMap((one) => {
    const circuit = index.circuits.get(one.circuit);
    if (one.loads.length === 0)
      return [
        [
          one.circuit,
          one.suitability.isUnlisted ? "(not listed)" : "(spare)",
          one.suitability.isUnlisted ? "not known" : "-",
          "",
          circuit?.label ?? "",
        ],
      ];
    return one.loads.map((load) => {
      const { flicker, lowest, suitability, steady } = load;
      const may = steady.must === "yes" ? "NO" : MAY[suitability.may];
      const why = steady.code === "wished-steady" ? dimmingWhy("wished-steady") : dimmingWhy(suitability.code);
      const seen = flicker.kind === "known" && may !== "NO" ? `flicker ${KEEPS[flicker.value.lowRisk]} low risk` : "";
      const duty = lowest.kind === "known" && may !== "NO" ? percent(lowest.value.dutyRatio) : "";
      return [one.circuit, load.load.name, may, duty, [why, seen].filter(Boolean).join("; ")];
    });
  });
}

export const CIRCUIT_HEADS = ["circuit", "load", "may dim", "from duty", "why"] as const;

/** Everything of one module. */
export function moduleText(index: CoachIndex, one: ModuleDimming, units: Units, width: number): string {
  const module = index.modules.get(one.module);
  const blocks = one.blocks.map(({ block, suitability }) => {
    if (suitability.kind !== "known") return `  block ${block}: ${lacking(suitability)}`;
    const { may, spoiledBy, unknown, conditions } = suitability.value;
    const told = may === "no" ? spoiledBy : may === "unknown" ? unknown : may === "only-if" ? conditions : [];
    const why = told.map(
      (each) =>
        `channel ${each.channel}${each.load === undefined ? "" : `, ${index.loads.get(each.load)?.name ?? each.load}`} (${dimmingWhy(each.code)})`,
    );
    return `  block ${block}: ${BLOCK_MAY[may]}${why.length > 0 ? `: ${why.join("; ")}` : ""}`;
  });
  return [
    [
      `${one.module}  ${module?.name ?? one.module}, ${kindLine(one.kind, units)}`,
      ...blocks.flatMap((line) => wrapped(line, width)),
    ].join("\n"),
    columns([[...CIRCUIT_HEADS], ...circuitRows(index, one.circuits)], width, [3]),
    kindRampsText(one.ramps, width),
  ].join("\n\n");
}
