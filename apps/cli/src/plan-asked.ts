import { demandOf } from "@fusebook/core/plan";
import { type CoachIndex, type FixedChoice, indexRecord, type Job } from "@fusebook/core/record";
import { text, texts, type Values } from "./command.js";
import { Misuse } from "./misuse.js";
import { kindMeant, moduleMeant, subjectMeant } from "./plan-names.js";

/** What a job may rule out beside a kind. */
export const MEANS = ["moves", "steady-feeds", "rewires", "reuse"] as const;

type Limits = NonNullable<Job["constraints"]>;

function amount(values: Values, option: string, what: string, isWhole: boolean): number | undefined {
  const given = text(values, option);
  if (given === undefined) return undefined;
  const value = Number(given);
  if (given.trim() === "" || !Number.isFinite(value) || value < 0 || (isWhole && !Number.isInteger(value)))
    throw new Misuse(`--${option} ${given}: wanted ${what}, 0 or more; leave it out for no limit`);
  return value;
}

/** A choice made on the line: `m2=D12` (this module gets this kind), `c2.02=m4` (this circuit goes there). */
function fixedChoice(index: CoachIndex, option: string, name: string, what: string): FixedChoice {
  const subject = subjectMeant(index, option, name);
  if (subject.sort === "module") return { module: subject.id, kind: kindMeant(index, option, what, []) };
  const circuit = subject.sort === "circuit" ? subject.id : index.circuitOfLoad.get(subject.id)?.id;
  if (circuit === undefined)
    throw new Misuse(`--${option} ${name}=${what}: no circuit of the record feeds ${subject.id}; add it to one first`);
  return { circuit, toModule: moduleMeant(index, option, what) };
}

const halves = (given: string): readonly [string, string | undefined] => {
  const at = given.indexOf("=");
  return at < 0 ? [given, undefined] : [given.slice(0, at), given.slice(at + 1)];
};

function lockInto(index: CoachIndex, limits: Limits, given: string): Limits {
  const [name, what] = halves(given);
  if (what !== undefined)
    return { ...limits, fixedChoices: [...(limits.fixedChoices ?? []), fixedChoice(index, "lock", name, what)] };
  const subject = subjectMeant(index, "lock", name);
  switch (subject.sort) {
    case "module":
      return { ...limits, lockedModules: [...(limits.lockedModules ?? []), subject.id] };
    case "circuit":
      return { ...limits, lockedCircuits: [...(limits.lockedCircuits ?? []), subject.id] };
    case "load":
      return { ...limits, lockedLoads: [...(limits.lockedLoads ?? []), subject.id] };
  }
}

function forbidInto(index: CoachIndex, limits: Limits, given: string): Limits {
  const [name, what] = halves(given);
  if (what !== undefined) {
    const choice = { ...fixedChoice(index, "forbid", name, what), isForbidden: true };
    return { ...limits, fixedChoices: [...(limits.fixedChoices ?? []), choice] };
  }
  const means = MEANS.find((each) => each === name);
  if (means !== undefined) return { ...limits, rulesOut: [...(limits.rulesOut ?? []), means] };
  return {
    ...limits,
    forbiddenKinds: [...(limits.forbiddenKinds ?? []), kindMeant(index, "forbid", name, MEANS)],
  };
}

/** The job with what the line adds to it: budget, minutes, locks and bans. What contradicts the job or itself is a misuse that says what to take away. */
export function askedJob(index: CoachIndex, job: Job | undefined, values: Values): Job | undefined {
  const budget = amount(values, "budget", "an amount of money", false);
  const maxMinutes = amount(values, "minutes", "whole minutes", true);
  const locks = texts(values, "lock");
  const bans = texts(values, "forbid");
  if (budget === undefined && maxMinutes === undefined && locks.length + bans.length === 0) return job;
  const base = job ?? ({ id: "asked", title: "asked on the line" } as Job);
  let limits: Limits = {
    ...base.constraints,
    ...(budget === undefined ? {} : { budget }),
    ...(maxMinutes === undefined ? {} : { maxMinutes }),
  };
  for (const given of locks) limits = lockInto(index, limits, given);
  for (const given of bans) limits = forbidInto(index, limits, given);
  const asked = { ...base, constraints: limits };
  const known = new Set(demandOf(index, job).faults.map((fault) => fault.message));
  const jobs = (index.record.jobs ?? []).filter((each) => each.id !== asked.id);
  const withAsked = indexRecord({ ...index.record, jobs: [...jobs, asked] });
  const fresh = demandOf(withAsked, asked).faults.filter((fault) => !known.has(fault.message));
  if (fresh.length > 0) {
    const line = [...locks.map((each) => `--lock ${each}`), ...bans.map((each) => `--forbid ${each}`)].join(" ");
    throw new Misuse(
      `${line}: cannot all be:\n${fresh.map((fault) => `  ${fault.message.replace(/^[^:]*constraints\./, "")} [${fault.code}]`).join("\n")}`,
    );
  }
  return asked;
}
