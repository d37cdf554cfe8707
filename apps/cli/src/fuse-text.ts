import { bendsA, type CircuitProtection, openingTimes, type UnderPolicy } from "@fusebook/core/protection";
import { digitsOf, type Outcome, showQuantity, type UnitChoice } from "@fusebook/core/quantity";
import type { CoachIndex } from "@fusebook/core/record";
import { columns, wrap } from "./columns.js";
import {
  amps,
  ampsSpan,
  circuitTitle,
  conductorName,
  fuseTitle,
  joulesText,
  memoryMark,
  sizeText,
  timeText,
  whyNot,
} from "./fuse-words.js";

interface Told {
  readonly index: CoachIndex;
  readonly told: CircuitProtection;
  readonly units: UnitChoice;
  readonly width: number;
}

/** Asked of what is known; else what it needs. */
const ifKnown = <T>(outcome: Outcome<T>, say: (value: T) => string): string =>
  outcome.kind === "known" ? say(outcome.value) : whyNot(outcome);

const so = (verdict: string): string => ({ holds: "holds", fails: "FAILS", open: "OPEN" })[verdict] ?? verdict;

function gatesText({ told, units, width }: Told): string {
  return ifKnown(told.fuse, (fuse) => {
    const rows = bendsA(fuse).map((currentA) => {
      const { soonestS, latestS } = openingTimes(fuse, currentA);
      const soonest = soonestS === 0 ? "no gate" : timeText(soonestS);
      return [`${digitsOf((100 * currentA) / fuse.ratedA)} %`, amps(currentA, units), soonest, timeText(latestS)];
    });
    const sets = fuse.sets.map((set) => `${set.name}${memoryMark([set.source])}`).join(" or ");
    const heads = ["of rating", "current", "opens no sooner than", "at the latest"];
    return `${sets}\n${columns([heads, ...rows], width, [0, 1, 2])}`;
  });
}

function startText({ told, units }: Told): string {
  return ifKnown(told.inrush, (inrush) => {
    const falls = inrush.timeConstantS > 0 ? `, falls to 1/e of its excess in ${timeText(inrush.timeConstantS)}` : "";
    const joules = inrush.timeConstantS > 0 ? `, ${joulesText(inrush.jouleA2s)} until it runs` : "";
    const peak = `peak ${ampsSpan(inrush.peakA, inrush.peakSpan, units)}${falls}${joules}${memoryMark(inrush.sources)}`;
    const passes = ifKnown(told.inrushPasses, ({ verdict, nominal, least, most, isTold }) =>
      isTold || verdict === "holds"
        ? `nearest to the quickest fuse after ${timeText(nominal.atS)}: ${amps(nominal.allowedA, units)} is sure to pass, ${digitsOf(nominal.ratio, 2)} times what was drawn until then (${digitsOf(most.ratio, 2)} to ${digitsOf(least.ratio, 2)}): ${so(verdict)}`
        : `no gate says how soon this fuse may open at such a current: ${so(verdict)}`,
    );
    return `${peak}\n${passes}`;
  });
}

function shortText({ index, told, units }: Told): string {
  if (told.ends.kind !== "known")
    return ifKnown(told.fault, (fault) => `${ampsSpan(fault.currentA, fault.span, units)}; ${whyNot(told.ends)}`);
  return told.ends.value
    .map(({ end, clearing }) => {
      const where = end.at === "run" ? "" : `at ${index.loads.get(end.loadId as never)?.name ?? end.loadId}: `;
      const between =
        clearing.span.lo === clearing.span.hi
          ? ""
          : ` (${timeText(clearing.span.lo)} to ${timeText(clearing.span.hi)})`;
      return `${where}${ampsSpan(end.currentA, end.span, units)}; the slowest fuse opens in ${timeText(clearing.latestS)}${between}: ${so(clearing.verdict)} within ${timeText(clearing.withinS)}`;
    })
    .join("\n");
}

/** What limits the short, by place. */
function wayText({ told, units }: Told): string {
  return ifKnown(told.fault, ({ parts, emfV }) => {
    const byPlace = new Map<string, number>();
    for (const { place, ohm } of parts) byPlace.set(place, (byPlace.get(place) ?? 0) + ohm);
    const places = [...byPlace].map(([place, ohm]) => `${place} ${showQuantity(ohm, "resistance", units)}`);
    return `${showQuantity(emfV, "voltage", units)} at rest behind ${places.join(", ")}`;
  });
}

function conductorsText({ index, told, width }: Told): string {
  return ifKnown(told.ends, (ends) => {
    const seen = new Set<string>();
    const rows = ends.flatMap(({ conductors }) =>
      conductors
        .filter(({ conductor }) => !seen.has(conductor.path) && seen.add(conductor.path))
        .map(({ conductor, limitA2s, letThroughA2s, standsS, verdict }) => [
          conductorName(index, conductor),
          sizeText(index, conductor),
          joulesText(limitA2s),
          standsS > 5 ? "over 5 s" : timeText(standsS),
          joulesText(letThroughA2s),
          so(verdict),
        ]),
    );
    if (rows.length === 0) return "no conductor's size is on record";
    return columns([["", "size", "stands", "for", "fuse lets through", ""], ...rows], width, [2, 3, 4]);
  });
}

function beforeText({ told, units, width }: Told): string {
  if (told.above.length === 0) return "no device with a record on the way from the battery";
  const rows = told.above.map(({ device, selectivity, distance }) => {
    const rated = device.fuse.ratedA;
    const value = rated === undefined ? "?" : amps(typeof rated === "number" ? rated : rated.value, units);
    const name = device.cable.name ?? device.cable.id;
    const says = ifKnown(selectivity, ({ verdict, worstAtA, uptoA }) =>
      verdict === "holds"
        ? `stays whole up to ${amps(uptoA.hi, units)}`
        : verdict === "fails"
          ? `opens first about ${amps(worstAtA, units)}`
          : `overlaps, most about ${amps(worstAtA, units)}`,
    );
    const near = ifKnown(
      distance,
      ({ valueM, maxM, verdict }) =>
        `${showQuantity(valueM, "length", units)} of ${showQuantity(maxM, "length", units)}: ${so(verdict)}`,
    );
    return [name, `${value} ${device.fuse.type ?? ""}`.trim(), near, says];
  });
  return columns([["on the cable", "device", "from its supply", "on this short"], ...rows], width);
}

function limitsText(rows: readonly UnderPolicy[], { index, units, width }: Told): string {
  const lines = rows.flatMap(({ policy, runs, distance }) =>
    runs.map(({ part, id, path, ampacity, ceiling, fuse }, n) => [
      n === 0 ? policy : "",
      conductorName(index, { part, id, path, withstand: { kind: "missing", needs: [] } }),
      ampacity.kind === "known" ? ampsSpan(ampacity.value.ampacityA, ampacity.value.span, units) : "?",
      ceiling.kind === "known" ? ampsSpan(ceiling.value.maxA, ceiling.value.span, units) : "",
      fuse === undefined ? "" : so(fuse),
      ampacity.kind === "known"
        ? n === 0
          ? `device within ${showQuantity(distance.maxM, "length", units)}`
          : ""
        : whyNot(ampacity),
    ]),
  );
  return columns([["limits", "conductor", "carries", "device up to", "this fuse", "of its supply"], ...lines], width);
}

const block = (head: string, text: string, width: number): string =>
  `${head}\n${text
    .split("\n")
    .flatMap((line) => (line.length + 2 > width && !line.includes("   ") ? wrap(line, width - 2) : [line]))
    .map((line) => `  ${line}`.trimEnd())
    .join("\n")}`;

/** One circuit's protection in words and figures. */
export function protectionText(head: Told): string {
  const { told, units, width, index } = head;
  const inner: Told = { ...head, width: width - 2 };
  const breaks =
    told.interrupt.kind === "known"
      ? `its print says ${amps(told.interrupt.value.ratedA, units)}: ${so(told.interrupt.value.verdict)}`
      : "what it can break is not on record";
  return [
    `${circuitTitle(index, told)}: ${fuseTitle(told)}`,
    block("Gates", gatesText(inner), width),
    block(
      "Load",
      ifKnown(told.loadA, ({ value, span }) => ampsSpan(value, span, units)),
      width,
    ),
    block("Start, everything on it at once", startText(inner), width),
    block("Dead short at the far end", `${shortText(inner)}\n${wayText(inner)}`, width),
    block("Conductors in that short, against the slowest fuse", conductorsText(inner), width),
    block("Devices before it, battery first", beforeText(inner), width),
    block(
      "Dead short right behind the fuse",
      ifKnown(
        told.atFuse,
        ({ currentA, span }) => `${amps(currentA, units)}, up to ${amps(span.hi, units)}; ${breaks}`,
      ),
      width,
    ),
    block(
      "Limits",
      ifKnown(told.policies, (rows) => limitsText(rows, inner)),
      width,
    ),
  ].join("\n\n");
}

/** Every circuit in a line. */
export function allText(
  index: CoachIndex,
  all: readonly CircuitProtection[],
  units: UnitChoice,
  width: number,
): string {
  const rows = all.map((told) => {
    const end = told.ends.kind === "known" ? told.ends.value[0] : undefined;
    const short = told.fault.kind === "known" ? amps(told.fault.value.currentA, units) : "?";
    const worst = told.ends.kind === "known" ? worstOf(told.ends.value.flatMap((one) => one.conductors)) : "?";
    const rated = told.circuit.fuse?.ratedA;
    return [
      told.circuit.id,
      rated === undefined ? "?" : amps(typeof rated === "number" ? rated : rated.value, units),
      told.loadA.kind === "known" ? amps(told.loadA.value.value, units) : "?",
      told.inrushPasses.kind === "known" ? so(told.inrushPasses.value.verdict) : "?",
      short,
      end === undefined ? "?" : timeText(end.clearing.latestS),
      end === undefined ? "?" : so(end.clearing.verdict),
      worst,
      told.atFuse.kind === "known" ? amps(told.atFuse.value.span.hi, units) : "?",
      told.circuit.label || (index.loads.get((told.circuit.loads ?? [])[0] as never)?.name ?? ""),
    ];
  });
  const heads = ["circuit", "fuse", "load", "start", "short", "opens in", "in time", "wires", "behind fuse", "label"];
  return columns([heads, ...rows], width, [1, 2, 4, 5, 8]);
}

const RANK = ["fails", "open", "holds"] as const;

const worstOf = (all: readonly { readonly verdict: (typeof RANK)[number] }[]): string =>
  so(RANK.find((verdict) => all.some((one) => one.verdict === verdict)) ?? "?");
