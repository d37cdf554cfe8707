import type { Finding, FindingCode } from "../findings/index.js";
import type { CoachIndex } from "../record/index.js";
import { idsAbout, isAbout } from "./about.js";
import { type AllRead, allReadOf } from "./all-read.js";
import { askRules } from "./ask-again.js";
import { candidatesFor, namedFigures } from "./candidates.js";
import type { DoubtOptions, ReadingWorth } from "./doubt.js";
import { comparedOf } from "./margin.js";
import { narrowedFor } from "./narrowed.js";
import type { ReadableFigure } from "./reading.js";
import { sampleByNetwork } from "./sample-by-network.js";
import { sampleByRule } from "./sample-by-rule.js";
import type { SampledFinding } from "./sampled-finding.js";
import { worthOf } from "./worth.js";

const SAMPLES = 1000;
/** Asking a rule again costs more than a network sample. */
const RULE_SAMPLES = 200;
const WEIGHED = 6;

/** Everything that doubt knows of a coach: its open findings, the coaches drawn, and what each weighed reading would do for each finding. */
export interface WeighedCoach {
  readonly open: ReadonlyMap<string, Finding>;
  readonly sampled: ReadonlyMap<string, SampledFinding>;
  readonly allRead: ReadonlyMap<string, AllRead>;
  /** By path of the figure, by name of the finding. */
  readonly worth: ReadonlyMap<
    string,
    { readonly figure: ReadableFigure; readonly of: ReadonlyMap<string, ReadingWorth> }
  >;
}

/** Finds the open verdicts, draws coaches, and weighs the readings that promise most. */
export function weighCoach(index: CoachIndex, options: DoubtOptions): WeighedCoach {
  const { seed, samples = SAMPLES, weighed = WEIGHED } = options;
  const about = options.only === undefined ? undefined : idsAbout(index, options.only);
  const { findings, states } = askRules(index, options.codes === undefined ? undefined : new Set(options.codes));
  const open = new Map(
    [...findings].filter(
      ([, finding]) => finding.verdict === "open" && (about === undefined || isAbout(finding, about)),
    ),
  );
  const compared = new Map([...open].filter(([, finding]) => comparedOf(finding) !== undefined));
  const sampled = sampleByNetwork(index, compared, states, { seed, samples });
  for (const [key, finding] of compared) {
    if (sampled.has(key)) continue;
    const figures = namedFigures(index, finding);
    const found = sampleByRule(index, key, finding, figures, { seed, samples: Math.min(samples, RULE_SAMPLES) });
    if (found !== undefined) sampled.set(key, found);
  }
  const figures = new Map<string, ReadableFigure>();
  for (const [key, finding] of compared)
    for (const figure of candidatesFor(index, finding, sampled.get(key), weighed)) figures.set(figure.path, figure);
  const seenBy = narrowedFor(compared.values());
  const codes = new Set([...compared.values()].map((finding): FindingCode => finding.code));
  const ask = (changed: CoachIndex) => askRules(changed, codes, seenBy).findings;
  const named = [...compared.values()].flatMap((finding) => namedFigures(index, finding));
  return {
    open,
    sampled,
    allRead: compared.size === 0 ? new Map() : allReadOf(index, compared, sampled, named, ask),
    worth: new Map([...figures].map(([path, figure]) => [path, { figure, of: worthOf(index, figure, compared, ask) }])),
  };
}
