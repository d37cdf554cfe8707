import { type Finding, findingWords } from "@fusebook/core/findings";
import type { CoachSolution } from "@fusebook/core/network";
import { figureValue, showQuantity, type UnitChoice } from "@fusebook/core/quantity";
import type { Circuit, CoachIndex, Module, ModuleKind } from "@fusebook/core/record";
import { textValue } from "@fusebook/core/record";
import { readOption } from "@fusebook/core/switchbank";
import type { ModulePage } from "../book/book-view.js";
import type { ChannelRow } from "../drawings/module-sheet.js";
import { fusePatchOf } from "./fuse-patch-of.js";
import { marginOf } from "./margin-of.js";
import { feedsOf, moduleName, placeName } from "./names.js";
import { shownFigure } from "./shown-figure.js";
import { switchCardOf } from "./switch-card-of.js";

/** What the pages of a coach as it stands are drawn from. */
export interface CoachAsItStands {
  readonly index: CoachIndex;
  readonly findings: readonly Finding[];
  readonly bySubject: ReadonlyMap<string, readonly Finding[]>;
  /** Everything on, where the network can be solved. */
  readonly allOn: CoachSolution | undefined;
  readonly units: UnitChoice;
}

/** Dim blocks enabled as the bank stands, or undefined where that cannot be read. */
export function enabledOf(index: CoachIndex, module: Module): readonly string[] | undefined {
  const bank = module.kind === undefined ? undefined : index.moduleKinds.get(module.kind)?.bank;
  if (bank === undefined || module.positionsFound === undefined) return undefined;
  const read = readOption(bank, module.positionsFound);
  return read.kind === "known" ? read.value : undefined;
}

/** One module's page: facts, channels with margins, its bank as it stands. */
export function modulePageOf(coach: CoachAsItStands, module: Module): ModulePage {
  const { index, units } = coach;
  const kind = module.kind === undefined ? undefined : index.moduleKinds.get(module.kind);
  const enables = enabledOf(index, module);
  const dimmed = new Set(
    (kind?.dimBlocks ?? []).filter((block) => enables?.includes(block.id)).flatMap((block) => block.channels),
  );
  const feed = (index.record.cables ?? []).find(
    (cable) => cable.to === module.feedNode || cable.from === module.feedNode,
  );
  const feedWords = [
    feed?.name ?? feed?.id ?? "not known",
    feed?.gauge === undefined ? "" : textValue(feed.gauge),
    feed?.protection?.ratedA === undefined ? "" : `${figureValue(feed.protection.ratedA)} A fuse`,
  ];
  const total = coach.allOn?.moduleA.get(module.id);
  const address = [module.address === undefined ? "not known" : String(module.address)];
  if (module.answersTo !== undefined && module.answersTo !== module.address)
    address.push(`it was seen to answer to ${module.answersTo}`);
  return {
    sheet: {
      title: moduleName(index, module),
      positions: module.positionsFound ?? "",
      onIs: kind?.bank?.onIs,
      rows: (index.circuitsOfModule.get(module.id) ?? []).map((circuit) => channelRowOf(coach, circuit)),
      dimmed,
    },
    facts: [
      ["Kind", kind?.name ?? "not known"],
      ["Place", placeName(index, module.place) || "not known"],
      ["Address", address.join("; ")],
      ["Fed by", feedWords.filter((word) => word !== "").join(", ")],
      [
        "All on",
        total?.kind === "known"
          ? { text: showQuantity(total.value, "current", units), under: ratingWords(kind, units) }
          : "not known",
      ],
    ],
    card: switchCardOf(index, module, kind, module.positionsFound ?? "", enables),
    notes: [
      ...(module.notes === undefined ? [] : [module.notes]),
      ...(coach.bySubject.get(module.id) ?? []).map((finding) => `${findingWords(finding, units).statement}.`),
    ],
  };
}

function ratingWords(kind: ModuleKind | undefined, units: UnitChoice): string {
  if (kind?.ratedTotalA === undefined) return "rating of the module not known";
  const rating = shownFigure(kind.ratedTotalA, "current", units);
  return `of ${rating.text} that the module may carry, ${rating.under}`;
}

function channelRowOf(coach: CoachAsItStands, circuit: Circuit): ChannelRow {
  const { index, units } = coach;
  const amps = coach.allOn?.circuitA.get(circuit.id);
  const out = circuit.out;
  const size =
    out?.gauge !== undefined
      ? textValue(out.gauge)
      : out?.sectionMm2 !== undefined
        ? showQuantity(figureValue(out.sectionMm2), "section", units)
        : "";
  const length = out?.lengthM === undefined ? "" : showQuantity(figureValue(out.lengthM), "length", units);
  const { margin, note } = marginOf(circuit, coach.bySubject, units);
  return {
    channel: circuit.channel ?? 0,
    fuse: circuit.fuse === undefined && circuit.isSpare ? undefined : fusePatchOf(circuit.fuse),
    wire: [size, length].filter((word) => word !== "").join(", "),
    currentA: amps?.kind === "known" ? amps.value : undefined,
    amps: amps?.kind === "known" ? showQuantity(amps.value, "current", units) : "",
    margin,
    loads: feedsOf(index, circuit),
    note,
  };
}
