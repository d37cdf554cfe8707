import {
  bendsA,
  type CircuitProtection,
  type ConductorInFault,
  type FuseGates as CoreGates,
  type Inrush,
  openingTimes,
} from "@fusebook/core/protection";
import type { Outcome, UnitChoice } from "@fusebook/core/quantity";
import type { CoachIndex } from "@fusebook/core/record";
import {
  type ChartLook,
  type ChartMargin,
  type ConductorLimit,
  type CurvePoint,
  type FuseGates,
  type LabelledCurve,
  type TimeCurrentData,
  timeCurrentChart,
} from "@fusebook/paper/charts";
import { ampsSpan, circuitTitle, conductorName, fuseTitle, joulesText, sizeText, timeText } from "./fuse-words.js";

/** Points a decade of current between the gates: enough for two sets of gates that cross. */
const POINTS_PER_DECADE = 24;

function gatesOf(fuse: CoreGates, label: string, uptoA: number): FuseGates | undefined {
  const bends = bendsA(fuse);
  const [from, to] = [bends[0]!, Math.max(uptoA, bends.at(-1)!)];
  const count = Math.ceil(POINTS_PER_DECADE * Math.log10(to / from));
  const grid = Array.from({ length: count + 1 }, (_, i) => from * (to / from) ** (i / Math.max(1, count)));
  const currents = [...new Set([...bends, ...grid])].sort((a, b) => a - b);
  const points = (of: "soonestS" | "latestS"): CurvePoint[] =>
    currents
      .map((currentA): CurvePoint => [currentA, openingTimes(fuse, currentA)[of]])
      .filter(([, timeS]) => timeS > 0 && Number.isFinite(timeS));
  const [fastest, slowest] = [points("soonestS"), points("latestS")];
  if (fastest.length < 2 && slowest.length < 2) return undefined;
  return {
    label,
    note: fuse.sets.map((set) => set.name).join(" or "),
    isFromMemory: fuse.sets.some((set) => set.source.how === "memory"),
    ...(fastest.length < 2 ? {} : { fastest }),
    ...(slowest.length < 2 ? {} : { slowest }),
  };
}

const EARLIEST_S = 1e-3;

/** What was drawn since switching on, as one steady current that heats alike: what a fuse feels. */
function startOf(inrush: Inrush): LabelledCurve | undefined {
  const { curve } = inrush;
  if (inrush.timeConstantS === 0) return undefined;
  const points: CurvePoint[] = [];
  for (let i = 1; i < curve.timeS.length; i++) {
    const timeS = curve.timeS[i]!;
    if (timeS < EARLIEST_S || timeS > Math.max(1, 3 * curve.settledS)) continue;
    points.push([Math.sqrt(curve.jouleA2s[i]! / timeS), timeS]);
  }
  if (points.length < 2) return undefined;
  return {
    label: "Starting current, root mean square since switching on",
    note: `peak ${ampsSpan(inrush.peakA, inrush.peakSpan, "us")}`,
    isFromMemory: inrush.sources.some((source) => source.how === "memory"),
    points,
  };
}

/** Less than half of what it stands is ample. */
const AMPLE_RATIO = 0.5;

const marginOf = ({ verdict, letThroughA2s, limitA2s }: ConductorInFault): ChartMargin =>
  verdict === "holds" ? (letThroughA2s <= AMPLE_RATIO * limitA2s ? "ample" : "tight") : verdict;

/** The circuit's own conductors and the thinnest of those before it; two of one size and margin are one line. */
function limitsOf(index: CoachIndex, told: CircuitProtection, uptoA: number): ConductorLimit[] {
  if (told.ends.kind !== "known") return [];
  const byPath = new Map<string, ConductorInFault>();
  for (const { conductors } of told.ends.value)
    for (const one of conductors) if (!byPath.has(one.conductor.path)) byPath.set(one.conductor.path, one);
  const all = [...byPath.values()];
  const isOwn = ({ conductor }: ConductorInFault) => !conductor.path.startsWith("cables");
  const feeder = all.filter((one) => !isOwn(one)).sort((a, b) => a.limitA2s - b.limitA2s)[0];
  const drawn = new Map<string, { names: string[]; one: ConductorInFault }>();
  for (const one of [...all.filter(isOwn), ...(feeder ? [feeder] : [])]) {
    const key = `${one.limitA2s} ${marginOf(one)}`;
    const found = drawn.get(key) ?? { names: [], one };
    found.names.push(conductorName(index, one.conductor));
    drawn.set(key, found);
  }
  return [...drawn.values()].flatMap(({ names, one }) => {
    const atFiveS = Math.sqrt(one.limitA2s / 5);
    if (atFiveS >= uptoA) return [];
    const size = sizeText(index, one.conductor);
    const label = `${names.join(" and ")}${size === "" ? "" : `, ${size}`}`;
    return [
      {
        label: `${label.charAt(0).toUpperCase()}${label.slice(1)}`,
        note: `stands ${joulesText(one.limitA2s)} (IEC 60364-4-43, up to 5 s)`,
        margin: marginOf(one),
        points: [
          [atFiveS, 5],
          [uptoA, one.limitA2s / uptoA ** 2],
        ] as const,
      },
    ];
  });
}

/** Everything one circuit's picture shows. */
export function pictureData(
  index: CoachIndex,
  told: CircuitProtection,
  coach: string,
  units: UnitChoice,
): TimeCurrentData {
  const fault = told.fault.kind === "known" ? told.fault.value : undefined;
  const rated = told.fuse.kind === "known" ? told.fuse.value.ratedA : 10;
  const uptoA = 2 * Math.max(fault?.span.hi ?? 0, 10 * rated);
  const own = told.fuse.kind === "known" ? gatesOf(told.fuse.value, fuseTitle(told), uptoA) : undefined;
  const before = told.above.flatMap(({ device, gates }) => {
    if (gates.kind !== "known") return [];
    const name = `${gates.value.ratedA} A ${gates.value.type} fuse before it, ${device.cable.name ?? device.cable.id}`;
    return gatesOf(gates.value, name, uptoA) ?? [];
  });
  const start = told.inrush.kind === "known" ? startOf(told.inrush.value) : undefined;
  const end = told.ends.kind === "known" ? told.ends.value[0] : undefined;
  const load = told.loadA.kind === "known" && told.loadA.value.span.lo > 0 ? told.loadA.value : undefined;
  const lacking = told.above.filter(({ gates }) => gates.kind !== "known").length;
  const conductors = limitsOf(index, told, uptoA);
  return {
    title: `${fuseTitle(told)} of ${circuitTitle(index, told)}`,
    subtitle: coach,
    fuses: [...(own ? [own] : []), ...before],
    ...(load
      ? {
          load: {
            label: "Load, everything on it running",
            note: ampsSpan(load.value, load.span, units),
            currentA: load.span,
          },
        }
      : {}),
    ...(start ? { inrushes: [start] } : {}),
    ...(conductors.length > 0 ? { conductors } : {}),
    ...(fault
      ? {
          prospective: {
            label: "Dead short at the far end",
            note: ampsSpan(fault.currentA, fault.span, units),
            currentA: fault.span,
          },
        }
      : {}),
    ...(end && Number.isFinite(end.clearing.span.hi) && end.clearing.soonestS > 0
      ? {
          opening: {
            label: "The fuse opens on that short",
            note: `after ${timeText(Math.min(end.clearing.soonestS, end.clearing.span.lo))} to ${timeText(end.clearing.span.hi)}`,
            currentA: end.end.span,
            timeS: { lo: Math.min(end.clearing.soonestS, end.clearing.span.lo), hi: end.clearing.span.hi },
          },
        }
      : {}),
    caption: [
      "Straight lines between gates on both logarithmic scales; above the last gate the joule integral is held.",
      ...(lacking > 0
        ? [`${lacking} of the fuses before it have no gates in a published table: they are not drawn.`]
        : []),
    ],
  };
}

export const fusePicture = (data: TimeCurrentData, look: ChartLook): Outcome<string> => timeCurrentChart(data, look);
