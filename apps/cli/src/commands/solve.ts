import { type CoachSamples, sampleCoach, solveCoach, spanCoach } from "@fusebook/core/network";
import type { Outcome } from "@fusebook/core/quantity";
import { indexRecord } from "@fusebook/core/record";
import { jsonText } from "../columns.js";
import { type Command, EXIT, flag, text, type Values } from "../command.js";
import { Misuse } from "../misuse.js";
import { loadRecord } from "../records.js";
import { answerRows, QUANTILE_RATIOS } from "../solve-rows.js";
import { stateAsked, stateText } from "../solve-state.js";
import { answerText } from "../solve-text.js";

const MOST_SAMPLES = 1_000_000;

function wholeNumber(values: Values, name: string, least: number, most: number): number | undefined {
  const written = text(values, name);
  if (written === undefined) return undefined;
  const value = /^\d+$/.test(written) ? Number(written) : Number.NaN;
  if (value >= least && value <= most) return value;
  throw new Misuse(`--${name} ${written}: a whole number from ${least} to ${most} is wanted`);
}

/** An outcome in words: which fields are wanted, or why there is no answer. */
const whyNot = (outcome: Outcome<unknown>): string =>
  outcome.kind === "missing"
    ? `not on record: ${outcome.needs.join(", ")}`
    : outcome.kind === "refused"
      ? `${outcome.because} [${outcome.code}]`
      : "";

const sampledAs = ({ seed, samples, solved, unsolved }: CoachSamples) => ({
  seed,
  samples,
  solved,
  unsolved,
  ratios: QUANTILE_RATIOS,
});

/** Volts and amperes of the coach in one state. */
export const solve: Command = {
  name: "solve",
  usage: "RECORD",
  about:
    "Solves the coach in one state: volts and amperes at every load, module, cable and supply, and where each drop happens. With spans, between what each may lie; with samples, how likely.",
  examples: [
    ["fusebook solve coach.fusebook.json", "everything on at once, on battery"],
    ["fusebook solve coach.fusebook.json --on c1.03 --on 'VALANCE@40%'", "two circuits only, one dimmed"],
    [
      "fusebook solve coach.fusebook.json --state busy --charge 50% --spans",
      "a busy evening at half charge, with spans",
    ],
    ["fusebook solve coach.fusebook.json --samples 10000 --seed 7", "5, 50 and 95 % of coaches that fit the record"],
  ],
  options: {
    state: { type: "string" },
    on: { type: "string", multiple: true },
    charger: { type: "boolean" },
    engine: { type: "boolean" },
    charge: { type: "string" },
    spans: { type: "boolean" },
    samples: { type: "string" },
    seed: { type: "string" },
  },
  optionHelp: {
    state: "all (everything on; where absent and nothing is named) or busy (of what moves, only the greatest)",
    on: "a circuit by its id, label, name or load, @ its duty: c1.03, VALANCE@40%; again for more. Alone: only these; with --state: these too",
    charger: "the charger or converter is on",
    engine: "the engine runs: the alternator feeds",
    charge: "state of charge of the batteries, 60% or 0.6",
    spans: "between what each figure may lie over the record's tolerances",
    samples: "draw so many coaches from the tolerances; gives the 5, 50 and 95 % quantiles",
    seed: "which coaches are drawn, a whole number (1 where absent)",
  },
  minPositionals: 1,
  maxPositionals: 1,
  async run({ values, positionals, io }) {
    const record = await loadRecord(io, positionals[0] as string);
    const index = indexRecord(record);
    const state = stateAsked(values, index);
    const count = wholeNumber(values, "samples", 1, MOST_SAMPLES);
    const seed = wholeNumber(values, "seed", 0, 2 ** 31 - 1);
    if (seed !== undefined && count === undefined) throw new Misuse("--seed: says nothing without --samples");
    const solution = solveCoach(index, state);
    const spans = flag(values, "spans") && solution.kind === "known" ? spanCoach(index, state) : undefined;
    const samples =
      count !== undefined && solution.kind === "known"
        ? sampleCoach(index, state, { seed: seed ?? 1, samples: count })
        : undefined;
    const isJson = flag(values, "json");
    const head = {
      record: record.id,
      coach: record.coach.name,
      state: {
        name: state.name,
        on: [...state.on],
        dutyRatio: Object.fromEntries(state.dutyRatio ?? []),
        chargerOn: state.chargerOn ?? false,
        engineOn: state.engineOn ?? false,
        chargeRatio: state.chargeRatio ?? null,
      },
    };
    const title = `${record.coach.name}${record.coach.isInvented ? " (invented)" : ""}: ${stateText(state)}`;
    if (solution.kind !== "known") {
      if (isJson) io.out(jsonText({ ...head, ...solution }));
      else io.out(`${title}\nNo answer: ${whyNot(solution)}`);
      return EXIT.findings;
    }
    const answer = {
      solution: solution.value,
      spans: spans?.kind === "known" ? spans.value : undefined,
      samples: samples?.kind === "known" ? samples.value : undefined,
    };
    const rows = answerRows(index, answer);
    const { leftOut, assumed, balance, iterations } = solution.value;
    if (isJson)
      io.out(
        jsonText({
          ...head,
          kind: "known",
          ...(answer.samples ? { sampled: sampledAs(answer.samples) } : {}),
          ...(spans && spans.kind !== "known" ? { spansNot: spans } : {}),
          ...(samples && samples.kind !== "known" ? { samplesNot: samples } : {}),
          ...rows,
          leftOut,
          assumed,
          balance,
          iterations,
        }),
      );
    else {
      io.out(`${title}\n`);
      io.out(answerText(rows, io.columns));
      const notes = [
        ...(spans && spans.kind !== "known" ? [`No spans: ${whyNot(spans)}`] : []),
        ...(answer.samples
          ? [
              `${answer.samples.samples} coaches drawn, seed ${answer.samples.seed}: [5 % / half / 95 %] of those that have an operating point${answer.samples.unsolved > 0 ? `; ${answer.samples.unsolved} have none` : ", which is all"}.`,
            ]
          : []),
        ...(leftOut.length > 0
          ? [
              `Not on record, so that some figures are missing or at least so much: ${leftOut.length} (--json lists them).`,
            ]
          : []),
        ...(assumed.length > 0 ? [`Class figures stand in for ${assumed.length} that the record lacks.`] : []),
      ];
      for (const note of notes) io.out(note);
    }
    return EXIT.fine;
  },
};
