import type { Endurance } from "@fusebook/core/endurance";
import type { Outcome } from "@fusebook/core/quantity";
import type { CoachRecord } from "@fusebook/core/record";
import { type ChargeRun, type ChartLook, type CurvePoint, chargeChart } from "@fusebook/paper/charts";
import { hoursWords, percentWords, upTo } from "./hours-words.js";

/** The picture runs no further than this many times the middle figure: the most may be very long. */
const FURTHEST = 2.5;

type Point = { readonly timeH: number; readonly chargeRatio: number };

const curve = (points: readonly Point[], untilH: number): CurvePoint[] => {
  const kept: CurvePoint[] = [];
  for (const [i, { timeH, chargeRatio }] of points.entries()) {
    if (timeH <= untilH) {
      kept.push([timeH, chargeRatio]);
      continue;
    }
    const before = points[i - 1];
    if (before !== undefined && before.timeH < untilH) {
      const t = (untilH - before.timeH) / (timeH - before.timeH);
      kept.push([untilH, before.chargeRatio + t * (chargeRatio - before.chargeRatio)]);
    }
    break;
  }
  return kept;
};

function runOf(run: Endurance, label: string, untilH: number): ChargeRun {
  const bank = run.banks[0]!;
  const { span, nominal } = run.hours;
  const [low, high] = [curve(bank.least, untilH), curve(bank.most, untilH)];
  const isMemory = run.assumed.some((one) => one.source.how === "memory");
  const middle = curve(bank.points, untilH);
  return {
    label,
    note: `${upTo(nominal, run.horizonH)} by the figures as they stand`,
    points: middle.length > 1 ? middle : [...middle, [untilH, bank.chargeAtStart.value] as const],
    ...(isMemory ? { isFromMemory: true } : {}),
    ...(low.length > 1 && high.length > 1 ? { band: { low, high } } : {}),
    ...(span.hi < run.horizonH && span.hi <= untilH ? { hoursToReserve: span } : {}),
  };
}

/** The charge of the bank over the hours, before and after a plan, as SVG text. */
export function chargePicture(
  record: CoachRecord,
  before: Endurance,
  after: Endurance | undefined,
  plan: string | undefined,
  look: ChartLook = {},
): Outcome<string> {
  const runs = [before, ...(after === undefined ? [] : [after])];
  const untilH = Math.max(...runs.map((run) => Math.min(run.hours.span.hi, FURTHEST * run.hours.nominal)), 0.5);
  const bank = before.banks[0]!;
  return chargeChart(
    {
      title: `${record.coach.name}${record.coach.isInvented ? " (invented)" : ""}: hours on battery`,
      subtitle: `${before.profile.name ?? before.profile.id}; ${bank.name}, ${bank.capacityAh.value.toFixed(0)} Ah at ${bank.ratedHours} h, ${percentWords(bank.chargeAtStart.value)} full at the start`,
      caption: [
        "The bands are guaranteed over the record's figures; the profile is a habit, common practice without a source.",
        `Peukert at rated hours, exponent ${bank.exponent.value.toFixed(2)}; ${before.sunCounted.length > 0 ? "sun counted" : "no sun and no charger counted"}.`,
        ...(before.lastsOnce === "open"
          ? [`Whether it lasts the ${hoursWords(before.profileHours)} of the profile is open.`]
          : []),
      ],
      runs: [
        runOf(before, "as it is", untilH),
        ...(after === undefined ? [] : [runOf(after, `after plan ${plan ?? ""}`.trim(), untilH)]),
      ],
      reserve: {
        label: `${percentWords(before.reserveRatio)} kept back`,
        note: before.reserveSource.name,
        chargeRatio: before.reserveRatio,
      },
    },
    look,
  );
}
