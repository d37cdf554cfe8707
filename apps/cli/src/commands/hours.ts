import {
  type Endurance,
  type EnduranceOptions,
  enduranceOf,
  parasiticOf,
  profilesOf,
  readProfile,
} from "@fusebook/core/endurance";
import { applyPlan, type Plan } from "@fusebook/core/plan";
import type { Outcome } from "@fusebook/core/quantity";
import { readQuantity } from "@fusebook/core/quantity";
import { type CoachRecord, indexRecord, type LoadProfile } from "@fusebook/core/record";
import { jsonText } from "../columns.js";
import { type Command, EXIT, flag, text, type Values } from "../command.js";
import { enduranceJson, parasiticJson } from "../hours-json.js";
import { chargePicture } from "../hours-picture.js";
import { hoursText } from "../hours-text.js";
import type { Io } from "../io.js";
import { Misuse } from "../misuse.js";
import { PICTURE_OPTION_HELP, PICTURE_OPTIONS, writePicture } from "../picture-output.js";
import { jobOf, planMeant } from "../plan-pick.js";
import { searchPlans } from "../plan-search.js";
import { loadJson, loadRecord, unitsOf } from "../records.js";

/** A part of full as people write it: 50%, 50 %, 0.5. */
export function readRatio(given: string, option: string): number {
  const found = /^(-?\d+(?:\.\d+)?)\s*(%?)$/.exec(given.trim().replace(",", "."));
  const value = found === null ? Number.NaN : Number(found[1]) / (found[2] === "%" ? 100 : 1);
  if (!(value >= 0 && value <= 1))
    throw new Misuse(`--${option} ${given}: wanted 0 to 1 or 0% to 100%, as in 50% or 0.5`);
  return value;
}

/** No battery of a coach lives outside these. Common practice, no source. */
const COLDEST_C = -40;
const HOTTEST_C = 70;

function readTemperature(given: string): number {
  const read = readQuantity(given, "temperature");
  if (read.kind === "read") {
    if (read.value >= COLDEST_C && read.value <= HOTTEST_C) return read.value;
    throw new Misuse(`--battery-temp ${given}: wanted from ${COLDEST_C} C to ${HOTTEST_C} C, as in 5C or 40F`);
  }
  throw new Misuse(`--battery-temp ${given}: wanted a temperature with its unit, as in 5C or 40F: ${read.why}`);
}

async function profileMeant(io: Io, given: string, record: CoachRecord): Promise<string | LoadProfile> {
  const known = profilesOf(indexRecord(record));
  if (known.has(given)) return given;
  if (!/\.json$|^-$/i.test(given))
    throw new Misuse(`--profile ${given}: wanted ${[...known.keys()].join(", ")}, or a file that ends in .json`);
  const read = readProfile(await loadJson(io, given));
  if (read.kind === "known") return read.value;
  throw new Misuse(`${given} is not a profile: ${read.kind === "refused" ? read.because : ""}`);
}

async function planFor(record: CoachRecord, values: Values, io: Io): Promise<Plan | undefined> {
  const meant = text(values, "plan");
  if (meant === undefined) return undefined;
  return planMeant(await searchPlans(indexRecord(record), jobOf(record, text(values, "job")), io), meant);
}

/** What the line itself got wrong is misuse; what the record lacks is an answer. */
const isOfTheLine = (outcome: Outcome<unknown>): boolean =>
  outcome.kind === "refused" && /^(profile|horizon)-/.test(outcome.code);

const lackWords = (outcome: Outcome<unknown>): string =>
  outcome.kind === "missing"
    ? `the hours cannot be told: the record lacks ${outcome.needs.join(", ")}; write it down from the battery's label and ask again`
    : outcome.kind === "refused"
      ? `the hours cannot be told: ${outcome.because} [${outcome.code}]`
      : "";

/** How long the batteries last, before and after a plan, and what drains them with everything off. */
export const hours: Command = {
  name: "hours",
  usage: "RECORD [--profile evening|night|stored|FILE.json] [--plan PICK] [--svg FILE]",
  about:
    "Says how many hours the batteries last, used as in a profile, down to the charge that is to be kept: by the figures as they stand, at least and at most; what each load takes; the same after a plan; and what drains them with everything off. Without charger and sun unless asked.",
  examples: [
    ["fusebook hours coach.fusebook.json", "a night on battery, dusk to morning"],
    ["fusebook hours coach.fusebook.json --plan most-light", "before and after a plan: what dimming saves"],
    ["fusebook hours coach.fusebook.json --profile stored --svg stored.svg", "how long it may stand, with the picture"],
    ["fusebook hours coach.fusebook.json --from 100% --reserve 50% --battery-temp 5C", "from full, on a cold night"],
  ],
  options: {
    profile: { type: "string" },
    reserve: { type: "string" },
    from: { type: "string" },
    "battery-temp": { type: "string" },
    sun: { type: "boolean" },
    plan: { type: "string" },
    job: { type: "string" },
    all: { type: "boolean" },
    ...PICTURE_OPTIONS,
  },
  optionHelp: {
    profile: "evening, night, stored, one of the record's own, or a JSON file; night where absent",
    reserve: "charge to keep, as in 50%; the record's policy, else half for lead and a fifth for lithium",
    from: "charge at the start, as in 100%; as the record says where absent",
    "battery-temp": "temperature of the batteries, as in 5C, 40F or =-10C; as the record says where absent",
    sun: "count solar, as amps times hours on the record",
    plan: "a named pick or the id of a plan: the same hours after it",
    job: "the job whose wishes count for the plan; the first where absent",
    all: "every load and every figure that something stood in for",
    ...PICTURE_OPTION_HELP,
  },
  minPositionals: 1,
  maxPositionals: 1,
  async run({ values, positionals, io }) {
    const record = await loadRecord(io, positionals[0] as string);
    const profile = await profileMeant(io, text(values, "profile") ?? "night", record);
    const [reserve, from, warmth] = [text(values, "reserve"), text(values, "from"), text(values, "battery-temp")];
    const options: EnduranceOptions = {
      reserveRatio: reserve === undefined ? undefined : readRatio(reserve, "reserve"),
      chargeRatio: from === undefined ? undefined : readRatio(from, "from"),
      batteryC: warmth === undefined ? undefined : readTemperature(warmth),
      countSun: flag(values, "sun"),
    };
    const plan = await planFor(record, values, io);
    const index = indexRecord(record);
    const before = enduranceOf(index, profile, options);
    if (isOfTheLine(before)) throw new Misuse(before.kind === "refused" ? before.because : "");
    const after = plan === undefined ? undefined : enduranceOf(indexRecord(applyPlan(record, plan)), profile, options);
    const parasitic = parasiticOf(index, options);
    const isPictureAlone = text(values, "svg") === "-";
    if (before.kind === "known")
      await writePicture(io, values, (look) =>
        chargePicture(record, before.value, after?.kind === "known" ? after.value : undefined, plan?.id, look),
      );
    if (flag(values, "json"))
      io.out(
        jsonText({
          record: record.id,
          before: enduranceJson(before),
          plan: plan?.id ?? null,
          after: after === undefined ? null : enduranceJson(after),
          gainHours: gainOf(before, after),
          parasitic: parasiticJson(parasitic),
        }),
      );
    else if (before.kind === "known" && !isPictureAlone)
      io.out(
        hoursText({
          record,
          before: before.value,
          after: after?.kind === "known" ? after.value : undefined,
          plan,
          parasitic: parasitic.kind === "known" ? parasitic.value : undefined,
          isAll: flag(values, "all"),
          units: unitsOf(values, record),
          columns: io.columns,
        }),
      );
    for (const outcome of [before, after])
      if (outcome !== undefined && outcome.kind !== "known") io.err(lackWords(outcome));
    return before.kind === "known" && (after === undefined || after.kind === "known") ? EXIT.fine : EXIT.findings;
  },
};

const gainOf = (before: Outcome<Endurance>, after: Outcome<Endurance> | undefined): number | null =>
  before.kind === "known" && after?.kind === "known" ? after.value.hours.nominal - before.value.hours.nominal : null;
