import { checkRecord } from "@fusebook/core/findings";
import { applyPlan, type Plan } from "@fusebook/core/plan";
import {
  cautionWords,
  estimateOf,
  type PinMapRow,
  type PinPlace,
  partsListOf,
  pinMapOf,
  procedureOf,
  stepWords,
  toolsOf,
} from "@fusebook/core/procedure";
import { testsOf } from "@fusebook/core/proof";
import type { UnitChoice } from "@fusebook/core/quantity";
import { type CoachIndex, indexRecord, type Job } from "@fusebook/core/record";
import type { PacketView } from "../packet/packet-view.js";
import { feedsOf, moduleName } from "./names.js";
import type { PacketInputs } from "./packet-view-of.js";

const NOT_KNOWN = "not known: look at the part and write it here";

/** Whole cents as an amount with its currency. */
const amount = (cents: number, currency: string): string => `${(cents / 100).toFixed(2)} ${currency}`;

function estimateLines(plan: Plan, index: CoachIndex): PacketView["estimate"] {
  const estimate = estimateOf(plan, index);
  const money = (cents: number): string => amount(cents, estimate.currency);
  return {
    lines: estimate.lines.map((line) => ({
      what: line.what,
      quantity: line.unit === "minute" ? `${line.quantity} min` : String(line.quantity),
      each: line.eachCents === undefined ? "" : money(line.eachCents),
      total: money(line.totalCents),
    })),
    totals: [
      ["Parts and labour", money(estimate.netCents)],
      [`Tax, ${(estimate.taxRatio * 100).toFixed(2).replace(/\.?0+$/, "")} %`, money(estimate.taxCents)],
      ["Total", money(estimate.totalCents)],
    ],
    notes: estimate.needs.map((need) => `Not in the total, because the record does not say it: ${need}`),
  };
}

const pinText = (place: PinPlace | undefined): string =>
  place === undefined ? NOT_KNOWN : `${place.connector}, pin ${place.pin}`;

/** Where each wire of a module goes on the new part, for every module whose connectors differ. */
function pinMaps(before: CoachIndex, after: CoachIndex, plan: Plan): PacketView["pinMaps"] {
  return plan.modules.flatMap((choice) => {
    if (!choice.isReplaced) return [];
    const module = before.modules.get(choice.module);
    const to = after.moduleKinds.get(choice.to);
    const from = choice.from === undefined ? undefined : before.moduleKinds.get(choice.from);
    if (module === undefined || to === undefined) return [];
    const rows = pinMapOf(from, to);
    if (rows === undefined) return [];
    const byChannel = new Map(
      (before.circuitsOfModule.get(module.id) ?? []).map((circuit) => [circuit.channel, circuit]),
    );
    const what = (row: PinMapRow): string => {
      if (row.channel === undefined) return row.is ?? "";
      const circuit = byChannel.get(row.channel);
      return circuit === undefined ? `channel ${row.channel}` : `channel ${row.channel}, ${feedsOf(before, circuit)}`;
    };
    return [
      {
        title: `${moduleName(before, module)}: ${from?.name ?? "old part"} to ${to.name}`,
        rows: rows.map((row) => ({ circuit: what(row), from: pinText(row.from), to: pinText(row.to) })),
        ...(rows.some((row) => row.unknown.length > 0)
          ? {
              note: "Some pins are not on the record. Do not guess: read them off the part or its sheet before anything is plugged in.",
            }
          : {}),
      },
    ];
  });
}

/** Everything a packet says, worked out by the engines from the coach as found and the plan chosen. */
export function packetInputsOf(given: {
  readonly before: CoachIndex;
  readonly plan: Plan;
  readonly job?: Job | undefined;
  readonly date: string;
  readonly id: string;
  readonly units?: UnitChoice;
}): PacketInputs {
  const { before, plan } = given;
  const after = indexRecord(applyPlan(before.record, plan));
  const procedure = procedureOf(before, plan, after);
  return {
    before,
    after,
    plan,
    ...(given.job === undefined ? {} : { job: given.job }),
    procedure,
    tests: testsOf(after),
    findings: checkRecord(after),
    stepText: (step) => stepWords(step, before, after),
    cautionText: cautionWords,
    estimate: estimateLines(plan, before),
    parts: partsListOf(plan, before).map((part) => ({
      part: part.what,
      quantity: String(part.quantity),
      note: [part.partNumber, part.fromStock ? "on hand" : undefined].filter((each) => each !== undefined).join(", "),
    })),
    tools: toolsOf(procedure),
    pinMaps: pinMaps(before, after, plan),
    date: given.date,
    id: given.id,
    ...(given.units === undefined ? {} : { units: given.units }),
  };
}
