import { FINDING_CODES, type Finding, type FindingCode } from "../findings/index.js";
import type { CoachIndex } from "../record/index.js";
import { idsAbout, isAbout } from "./about.js";
import { type AllRead, allReadOf } from "./all-read.js";
import { askRules } from "./ask-again.js";
import { candidatesFor, namedFigures } from "./candidates.js";
import type { DoubtOptions, ReadingWorth } from "./doubt.js";
import { comparedOf } from "./margin.js";
import { listedAbout, narrowedFor } from "./narrowed.js";
import type { ReadableFigure } from "./reading.js";
import { sampleByNetwork } from "./sample-by-network.js";
import { sampleByRule } from "./sample-by-rule.js";
import { sampleOverSpan } from "./sample-over-span.js";
import type { SampledFinding } from "./sampled-finding.js";
import { worthOf } from "./worth.js";

const SAMPLES = 1000;
/** Asking a rule again costs more than a network sample. */
const RULE_SAMPLES = 200;
/** How many readings of each finding are weighed: of a few subjects, and of a whole coach, where many findings share the best ones. */
const WEIGHED = 6;
const WEIGHED_OF_ALL = 2;

/** Rules that run a start, a short circuit, a night or a winter in time: too dear to be asked again for each drawn coach; of the longest few figures are weighed. */
const RUNS_THROUGH_TIME: ReadonlySet<FindingCode> = new Set(["hours-below-wanted", "flat-in-storage"]);
const IS_DEAR: ReadonlySet<FindingCode> = new Set([
  ...RUNS_THROUGH_TIME,
  "inrush-over-fuse",
  "fault-over-conductor",
  "fault-not-cleared",
] as const);
const WEIGHED_THROUGH_TIME = 2;
/** Rules that share one solve of the coach: asked together they cost little more than one. */
const SHARE_A_SOLVE: ReadonlySet<FindingCode> = new Set([
  "drop-over-limit",
  "feeder-drop-over-limit",
  "voltage-under-minimum",
  "module-over-rating",
  "feeder-over-ampacity",
  "feeder-over-device",
  "busbar-over-rating",
]);

/** Everything that doubt knows of a coach: its open findings, the coaches drawn, and what each weighed reading would do for each finding. */
export interface WeighedCoach {
  readonly index: CoachIndex;
  readonly open: ReadonlyMap<string, Finding>;
  readonly sampled: ReadonlyMap<string, SampledFinding>;
  readonly allRead: ReadonlyMap<string, AllRead>;
  /** By path of the figure, by name of the finding. */
  readonly worth: ReadonlyMap<
    string,
    { readonly figure: ReadableFigure; readonly of: ReadonlyMap<string, ReadingWorth> }
  >;
}

/** What the rules say first: of the subjects asked for, or of all; rules through time only where their subject may be meant. */
function firstAsked(index: CoachIndex, options: DoubtOptions, about: ReadonlySet<string> | undefined) {
  if (about === undefined) return askRules(index, options.codes === undefined ? undefined : new Set(options.codes));
  const isOfCircuits = [...about].every(
    (id) => index.circuits.has(id) || index.loads.has(id) || index.modules.has(id) || index.cables.has(id),
  );
  const codes = (options.codes ?? FINDING_CODES).filter((code) => !isOfCircuits || !RUNS_THROUGH_TIME.has(code));
  return askRules(index, new Set(codes), listedAbout(about));
}

/** Finds the open verdicts, draws coaches, and weighs the readings that promise most. */
export function weighCoach(index: CoachIndex, options: DoubtOptions): WeighedCoach {
  const { seed, samples = SAMPLES } = options;
  const weighed = options.weighed ?? (options.only === undefined ? WEIGHED_OF_ALL : WEIGHED);
  const about = options.only === undefined ? undefined : idsAbout(index, options.only);
  const { findings, states } = firstAsked(index, options, about);
  const open = new Map(
    [...findings].filter(
      ([, finding]) => finding.verdict === "open" && (about === undefined || isAbout(finding, about)),
    ),
  );
  const compared = new Map([...open].filter(([, finding]) => comparedOf(finding) !== undefined));
  const sampled = sampleByNetwork(index, compared, states, { seed, samples });
  const named = new Map([...compared].map(([key, finding]) => [key, namedFigures(index, finding)]));
  for (const [key, finding] of compared) {
    if (sampled.has(key)) continue;
    const found = IS_DEAR.has(finding.code)
      ? sampleOverSpan(key, finding, { seed, samples })
      : sampleByRule(index, key, finding, named.get(key) ?? [], { seed, samples: Math.min(samples, RULE_SAMPLES) });
    if (found !== undefined) sampled.set(key, found);
  }
  const figures = new Map<string, ReadableFigure>();
  const codesOf = new Map<string, Set<FindingCode>>();
  for (const [key, finding] of compared) {
    const most = RUNS_THROUGH_TIME.has(finding.code) ? WEIGHED_THROUGH_TIME : weighed;
    for (const figure of candidatesFor(index, named.get(key) ?? [], sampled.get(key), most)) {
      figures.set(figure.path, figure);
      codesOf.set(figure.path, (codesOf.get(figure.path) ?? new Set<FindingCode>()).add(finding.code));
    }
  }
  const seenBy = narrowedFor(compared.values());
  const openCodes = new Set([...compared.values()].map((finding): FindingCode => finding.code));
  const askOf = (codes: ReadonlySet<FindingCode>) => (changed: CoachIndex) => askRules(changed, codes, seenBy).findings;
  const worth: WeighedCoach["worth"] = new Map(
    [...figures].map(([path, figure]) => {
      const own = codesOf.get(path)!;
      const isShared = [...own].some((code) => SHARE_A_SOLVE.has(code));
      const codes = new Set([...openCodes].filter((code) => own.has(code) || (isShared && SHARE_A_SOLVE.has(code))));
      const open = new Map([...compared].filter(([, finding]) => codes.has(finding.code)));
      return [path, { figure, of: worthOf(index, figure, open, askOf(codes)) }];
    }),
  );
  return {
    index,
    open,
    sampled,
    allRead:
      compared.size === 0
        ? new Map()
        : allReadOf(index, compared, sampled, [...named.values()].flat(), askOf(openCodes)),
    worth,
  };
}
