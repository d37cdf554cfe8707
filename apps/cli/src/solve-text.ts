import { fieldWords } from "@fusebook/core/findings";
import { showQuantity } from "@fusebook/core/quantity";
import { columns } from "./columns.js";
import type { AnswerRows, Told } from "./solve-rows.js";

/** Parts of a drop below this are not worth a word, V. */
const LEAST_SHOWN_V = 0.0005;
/** A span narrower than this, V or A, is said as a point. */
const LEAST_WIDE = 1e-6;

/** A span reaches outward by the rounding of its solve: what is left below this is nothing. */
const settled = (value: number): number => (Math.abs(value) < 1e-6 ? 0 : value);
const amps = (value: number): string => showQuantity(settled(value), "current", "metric");
const volts = (value: number): string => showQuantity(settled(value), "voltage", "metric");

type Show = (value: number) => string;

/** A number and its unit. */
const split = (written: string): readonly [number: string, unit: string] => {
  const at = written.lastIndexOf(" ");
  return [written.slice(0, at), written.slice(at + 1)];
};

/** Several amounts with the unit said once where it is one: `11.7 to 12.17 V`. */
function together(written: readonly string[], between: string): string {
  const parts = written.map(split);
  const unit = parts.at(-1)![1];
  return parts.every(([, one]) => one === unit)
    ? `${parts.map(([number]) => number).join(between)} ${unit}`
    : written.join(between);
}

/** `11.9 V`, with its span `11.4 to 12.2 V` and its quantiles `[11.6 / 11.8 / 12 V]` where there are some. */
function shown({ value, span, quantiles }: Told, show: Show): string {
  const isPoint = span !== undefined && (span.method === "point" || span.hi - span.lo < LEAST_WIDE);
  return [
    show(value),
    ...(span && !isPoint ? [together([show(span.lo), show(span.hi)], " to ")] : []),
    ...(quantiles && !isPoint ? [`[${together(quantiles.map(show), " / ")}]`] : []),
  ].join("  ");
}

function shownOutcome(told: AnswerRows["modules"][number]["currentA"], show: Show): string {
  if (told.kind === "known") return shown(told, show);
  return told.kind === "missing" ? "not known" : told.code;
}

type LoadRow = AnswerRows["loads"][number];

const whereText = (load: LoadRow): string => {
  if (load.kind === "missing") return `not on record: ${[...new Set(load.needs.map(fieldWords))].join(", ")}`;
  if (load.kind === "refused") return load.because;
  const parts = load.dropByPlace
    .filter(({ dropV }) => Math.abs(dropV) >= LEAST_SHOWN_V)
    .map(({ place, dropV }) => `${place} ${volts(dropV)}`);
  return parts.length > 0 ? parts.join(", ") : "-";
};

const amountCells = (load: LoadRow): string[] =>
  load.kind === "known" ? [shown(load.onV, volts), shown(load.onA, amps), shown(load.dropV, volts)] : ["-", "-", "-"];

/** The answer as tables: supplies, modules, cables, loads. Where spans or quantiles widen the columns, where each drop happens has a table of its own. */
export function answerText(rows: AnswerRows, width: number): string {
  const tables: string[] = [];
  const table = (title: readonly string[], body: readonly (readonly string[])[]) => {
    if (body.length > 0) tables.push(columns([title, ...body], width));
  };
  table(
    ["supply", "volts at its terminals", "gives"],
    rows.supplies.map((one) => [one.name, shown(one.terminalV, volts), shown(one.currentA, amps)]),
  );
  table(
    ["module", "draws"],
    rows.modules.map((one) => [one.name, shownOutcome(one.currentA, amps)]),
  );
  table(
    ["cable", "carries", "drops"],
    rows.cables.map((one) => [one.name, shownOutcome(one.currentA, amps), shownOutcome(one.dropV, volts)]),
  );
  const names = (load: LoadRow) => [load.circuit ?? "-", load.name];
  const isWide = rows.loads.some((load) => load.kind === "known" && (load.onV.span ?? load.onV.quantiles));
  if (isWide) {
    table(
      ["circuit", "load", "volts", "amperes", "drop"],
      rows.loads.map((load) => [...names(load), ...amountCells(load)]),
    );
    table(
      ["circuit", "load", "where it drops"],
      rows.loads.map((load) => [...names(load), whereText(load)]),
    );
  } else
    table(
      ["circuit", "load", "volts", "amperes", "drop", "where it drops"],
      rows.loads.map((load) => [...names(load), ...amountCells(load), whereText(load)]),
    );
  return `${tables.join("\n\n")}\n`;
}
