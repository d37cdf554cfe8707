import type { BankRun, Endurance, EnduranceAssumed, Parasitic } from "@fusebook/core/endurance";
import type { Plan } from "@fusebook/core/plan";
import { showQuantity } from "@fusebook/core/quantity";
import { type CoachRecord, indexRecord } from "@fusebook/core/record";
import { columns, wrap } from "./columns.js";
import { readingWords } from "./doubt-names.js";
import { ampereWords, hoursWords, lastsWords, markWords, percentWords, upTo } from "./hours-words.js";
import type { Units } from "./records.js";

export interface HoursTold {
  readonly record: CoachRecord;
  readonly before: Endurance;
  readonly after: Endurance | undefined;
  readonly plan: Plan | undefined;
  readonly parasitic: Parasitic | undefined;
  readonly isAll: boolean;
  readonly units: Units;
  readonly columns: number;
}

/** Loads shown where not all are asked for. */
const FIRST_LOADS = 12;

const endWords = (run: Endurance): string =>
  run.ends === "reserve"
    ? `down to ${percentWords(run.reserveRatio)}`
    : run.ends === "loads-out"
      ? "then some loads drop out"
      : "charge left at the end";

function bankLine(bank: BankRun, batteryText: string): string {
  const { capacityAh, ratedHours, exponent, coldShare, chargeAtStart } = bank;
  return `${bank.name}: ${showQuantity(capacityAh.value, "capacity", "metric")} at ${ratedHours} h (may be ${capacityAh.span.lo.toFixed(0)} to ${capacityAh.span.hi.toFixed(0)} Ah), exponent ${exponent.value.toFixed(2)} (${exponent.span.lo.toFixed(2)} to ${exponent.span.hi.toFixed(2)}), ${percentWords(coldShare.value)} of it left by the cold${batteryText}, ${percentWords(chargeAtStart.value)} full at the start (${percentWords(chargeAtStart.span.lo)} to ${percentWords(chargeAtStart.span.hi)})`;
}

function runsTable({ before, after, plan, columns: width }: HoursTold): string {
  const row = (name: string, run: Endurance): string[] => [
    name,
    upTo(run.hours.nominal, run.horizonH),
    upTo(run.hours.span.lo, run.horizonH),
    upTo(run.hours.span.hi, run.horizonH),
    `${lastsWords(run)}; ${endWords(run)}`,
  ];
  const rows = [row("as it is", before)];
  if (after !== undefined) rows.push(row(`after ${plan?.id ?? "the plan"}`, after));
  return columns([["", "lasts", "at least", "at most", "the profile once through"], ...rows], width, [1, 2, 3]);
}

function energyTable({ before, after, isAll, columns: width }: HoursTold): string {
  const later = new Map((after?.energy ?? []).map((one) => [`${one.kind}/${one.id}`, one]));
  const shown = isAll ? before.energy : before.energy.slice(0, FIRST_LOADS);
  const rows = shown.map((one) => {
    const then = later.get(`${one.kind}/${one.id}`);
    return [
      `${one.onceAh.toFixed(1)} Ah`,
      ...(after === undefined ? [] : [then === undefined ? "-" : `${then.onceAh.toFixed(1)} Ah`]),
      percentWords(one.shareRatio),
      one.name,
    ];
  });
  const total = (run: Endurance): string => `${run.energy.reduce((sum, one) => sum + one.onceAh, 0).toFixed(0)} Ah`;
  rows.push([total(before), ...(after === undefined ? [] : [total(after)]), "100 %", "all of it"]);
  const head = ["once through", ...(after === undefined ? [] : ["after"]), "share", "what takes it"];
  const rest = before.energy.length - shown.length;
  const table = columns([head, ...rows], width, after === undefined ? [0, 1] : [0, 1, 2]);
  return rest > 0 ? `${table}\n${rest} smaller ones are not shown; --all shows them.` : table;
}

function parasiticTable(parasitic: Parasitic, width: number): string {
  const rows = parasitic.draws.map((draw) => [
    ampereWords(draw.currentA),
    `${ampereWords(draw.span.lo)} to ${ampereWords(draw.span.hi)}`,
    draw.basis ?? markWords(draw.source.how),
    draw.name,
  ]);
  const { hoursToFlat, totalA, totalSpan, needs } = parasitic;
  return [
    columns([["draws", "may be", "known", "with everything off"], ...rows], width, [0, 1]),
    `${ampereWords(totalA)} in all (${ampereWords(totalSpan.lo)} to ${ampereWords(totalSpan.hi)}): flat in ${hoursWords(hoursToFlat.nominal)}, at the soonest in ${hoursWords(hoursToFlat.span.lo)}, at the latest in ${hoursWords(hoursToFlat.span.hi)}, without charger and sun.`,
    ...(needs.length > 0 ? [`Not counted, because the record lacks it: ${needs.join(", ")}`] : []),
  ].join("\n");
}

function assumedLines(assumed: readonly EnduranceAssumed[], isAll: boolean, width: number): string[] {
  const own = assumed.filter((one) => one.path.startsWith("supplies[") && !/internalResistanceOhm$/.test(one.path));
  const shown = isAll ? assumed : own;
  const lines = shown.flatMap((one) =>
    wrap(`${one.path}: ${Number(one.value.toPrecision(3))}, ${one.why} (${markWords(one.source.how)})`, width - 2).map(
      (line) => `  ${line}`,
    ),
  );
  const rest = assumed.length - shown.length;
  if (rest > 0) lines.push(`  and ${rest} figures of wires, modules and loads; --all shows them`);
  return lines.length > 0 ? ["Something stood in for", ...lines] : [];
}

/** One page: how long it lasts, what takes it, what drains it with everything off, and what all of that leans on. */
export function hoursText(told: HoursTold): string {
  const { record, before, after, parasitic, units } = told;
  const width = Math.min(told.columns, 110);
  const temperature = (c: number) => showQuantity(c, "temperature", units);
  const lines: string[] = [
    `${record.coach.name}${record.coach.isInvented ? " (invented)" : ""}: ${before.profile.name ?? before.profile.id}, keeping ${percentWords(before.reserveRatio)} (${before.reserveSource.name})`,
    ...before.banks.flatMap((bank) => wrap(bankLine(bank, ` at ${temperature(bank.temperatureC.value)}`), width)),
    "",
    runsTable(told),
  ];
  if (after !== undefined) {
    const gain = after.hours.nominal - before.hours.nominal;
    const dims = [...after.dimmed.keys()].filter((id) => !before.dimmed.has(id)).length;
    lines.push(
      `The plan gives ${gain < 0 ? "-" : ""}${hoursWords(Math.abs(gain))} more; ${dims} more circuits are dimmed in this profile. What is saved falls with duty, not with how bright it looks.`,
    );
  }
  if (before.because !== undefined) lines.push(...wrap(before.because, width));
  if (before.sunCounted.length > 0)
    lines.push(`Sun counted in the middle and the most, not in the least: ${before.sunCounted.join(", ")}`);
  if (before.leftOut.length > 0)
    lines.push(
      ...wrap(
        `Not in the middle figure, because the record lacks it: ${before.leftOut.map((path) => readingWords(indexRecord(record), path)).join("; ")}`,
        width,
      ),
    );
  lines.push("", energyTable(told));
  if (parasitic !== undefined) lines.push("", parasiticTable(parasitic, width));
  const assumed = assumedLines(before.assumed, told.isAll, width);
  if (assumed.length > 0) lines.push("", ...assumed);
  lines.push(
    "",
    "The least and the most are guaranteed over the record's figures, not over the habits of the profile, which are common practice without a source.",
  );
  return lines.join("\n");
}
