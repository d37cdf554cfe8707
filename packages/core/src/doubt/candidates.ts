import type { Finding } from "../findings/index.js";
import { conductorCOf, wireResistance } from "../network/index.js";
import { type CoachIndex, policyOf, type WireRun } from "../record/index.js";
import { fieldAt } from "./field-path.js";
import { readableAt } from "./readable.js";
import type { ReadableFigure } from "./reading.js";
import type { SampledFinding } from "./sampled-finding.js";

const LENGTH = ".lengthM";
const widthOf = ({ lo, hi }: { readonly lo: number; readonly hi: number }): number => hi - lo;

/** A look that nobody has had yet tells all; a figure is worth a reading only where the instrument is finer than what is known. */
const tellsMore = (figure: ReadableFigure): boolean =>
  figure.printed !== undefined || widthOf(figure.left) < widthOf(figure.now);

/** A wire whose length and size are known may be measured from end to end instead: one reading for both. */
function endToEnd(index: CoachIndex, lengthPath: string): ReadableFigure | undefined {
  const runPath = lengthPath.slice(0, -LENGTH.length);
  const run = fieldAt(index.record, runPath) as WireRun | undefined;
  if (run === undefined || run.resistanceOhm !== undefined) return undefined;
  const policy = policyOf(index.record);
  const zoneOf = (place: string) => index.places.get(place)?.zone;
  const wire = wireResistance(run, policy, conductorCOf(run, policy, zoneOf));
  if (wire.kind !== "known") return undefined;
  return readableAt(index, `${runPath}.resistanceOhm`, { nominal: wire.value.ohm, span: wire.value.span });
}

/** What the finding itself names, as far as it can be read: what it asks for, and the figures it shows. */
export function namedFigures(index: CoachIndex, finding: Finding): ReadableFigure[] {
  const paths = new Set([...finding.settledBy, ...finding.evidence].map(({ path }) => path));
  return [...paths].flatMap((path) => readableAt(index, path) ?? []).filter(tellsMore);
}

/**
 * Which figures are worth weighing for this finding? By a straight line through the samples: how much of the margin's width the figure makes, less what
 * the instrument would leave of it, for each minute. Best first, at most `most`; a look at something printed is always among them (`looks`:
 * the figures that the finding itself names).
 */
export function candidatesFor(
  index: CoachIndex,
  looks: readonly ReadableFigure[],
  sampled: SampledFinding | undefined,
  most: number,
): ReadableFigure[] {
  const found = new Map<string, { figure: ReadableFigure; worth: number }>();
  const put = (figure: ReadableFigure | undefined, slope: number): void => {
    if (figure === undefined || !tellsMore(figure)) return;
    const gain = figure.printed === undefined ? widthOf(figure.now) - widthOf(figure.left) : widthOf(figure.now);
    const worth = (Math.abs(slope) * gain) / Math.max(1, figure.minutes);
    const before = found.get(figure.path);
    if (before === undefined || before.worth < worth) found.set(figure.path, { figure, worth });
  };
  for (const { path, slope, nominal, span } of sampled?.slopes ?? []) {
    put(readableAt(index, path, { nominal, span }), slope);
    if (!path.endsWith(LENGTH) || !(nominal > 0)) continue;
    const whole = endToEnd(index, path);
    // The whole resistance grows as the length does: the slope by the one from the slope by the other.
    if (whole !== undefined && whole.nominal > 0) put(whole, (slope * nominal) / whole.nominal);
  }
  for (const figure of looks) put(figure, 0);
  const ranked = [...found.values()].sort((a, b) => b.worth - a.worth).map(({ figure }) => figure);
  const isLook = (figure: ReadableFigure) =>
    figure.printed !== undefined && looks.some((each) => each.path === figure.path);
  return [...ranked.filter(isLook), ...ranked.filter((figure) => !isLook(figure))].slice(
    0,
    most + ranked.filter(isLook).length,
  );
}
