import { allOnState, busyState, type CoachState } from "@fusebook/core/network";
import type { CircuitId, CoachIndex } from "@fusebook/core/record";
import { flag, text, type Values } from "./command.js";
import { Misuse } from "./misuse.js";
import { meantBy, type Named } from "./nearest.js";

const STATES: readonly Named[] = [
  { id: "all", names: ["everything on", "all on"] },
  { id: "busy", names: ["busy evening"] },
];

/** A share of one: `40%`, `40 %` or `0.4`. */
function ratioOf(option: string, written: string, what: string, isZeroFine: boolean): number {
  const found = /^\s*(\d+(?:\.\d+)?|\.\d+)\s*(%?)\s*$/.exec(written);
  const value = found ? Number(found[1]) / (found[2] === "%" ? 100 : 1) : Number.NaN;
  if (value >= 0 && value <= 1 && (isZeroFine || value > 0)) return value;
  const bounds = isZeroFine ? "from 0 to 100 %" : "above 0 up to 100 %";
  throw new Misuse(`${option}: ${what} ${bounds} is wanted, as 40% or 0.4; got "${written}"`);
}

/** Circuits by everything they may be called: their label and name, and what they feed. */
const circuitNames = (index: CoachIndex): Named[] =>
  [...index.circuits.values()].map(({ id, label, name, loads }) => ({
    id,
    names: [
      label ?? "",
      name ?? "",
      ...(loads ?? []).flatMap((load) => [load as string, index.loads.get(load)?.name ?? ""]),
    ].filter((one) => one !== ""),
  }));

const called = ({ id, names }: Named): string => (names.length > 0 ? `${id} (${names[0]})` : id);

/** What there is to name, where nothing comes near what was asked for. */
function circuitsThere(index: CoachIndex): string {
  const ids = [...index.circuits.keys()];
  return ids.length === 0
    ? "the record has no circuits yet"
    : `the record has ${ids.length}, from ${ids[0]} to ${ids[ids.length - 1]}; fusebook dim RECORD lists them`;
}

/** The circuit meant by these words, or a misuse naming the nearest. */
export function circuitMeant(index: CoachIndex, option: string, asked: string): CircuitId {
  const meant = meantBy(asked, circuitNames(index));
  if ("found" in meant) return meant.found.id as CircuitId;
  const nearest = meant.nearest.map(called).join(", ");
  throw new Misuse(
    `${option}: no one circuit is called "${asked}" by its id, label, name or load${nearest === "" ? `; ${circuitsThere(index)}` : `; nearest: ${nearest}`}`,
  );
}

/** `c1.03`, `c1.03@40%`, `PICTURE LT@0.4`: a circuit and the duty it is on at. */
function dutiesOf(index: CoachIndex, words: readonly string[]): Map<CircuitId, number> {
  const duties = new Map<CircuitId, number>();
  for (const word of words) {
    const at = word.lastIndexOf("@");
    const option = `--on ${word}`;
    const id = circuitMeant(index, option, (at < 0 ? word : word.slice(0, at)).trim());
    const duty = at < 0 ? 1 : ratioOf(option, word.slice(at + 1), "a duty", false);
    const before = duties.get(id);
    if (before !== undefined && before !== duty)
      throw new Misuse(
        `${option}: ${id} is named twice, with duties ${before * 100} % and ${duty * 100} %; say it once`,
      );
    duties.set(id, duty);
  }
  return duties;
}

/** The state asked for on the line: named circuits only, or all or busy, with some of them dimmed. */
export function stateAsked(values: Values, index: CoachIndex): CoachState {
  const words = ((values.on as string[] | undefined) ?? []).map(String);
  const duties = dutiesOf(index, words);
  const asked = text(values, "state");
  const charge = text(values, "charge");
  let base: CoachState;
  if (asked === undefined && duties.size > 0)
    base = { name: `only ${[...duties.keys()].join(", ")}`, on: new Set(duties.keys()) };
  else {
    const meant = meantBy(asked ?? "all", STATES);
    if (!("found" in meant))
      throw new Misuse(
        `--state ${asked}: wanted all or busy${meant.nearest.length > 0 ? `; nearest: ${meant.nearest.map((one) => one.id).join(", ")}` : ""}. Single circuits are named with --on`,
      );
    base = meant.found.id === "busy" ? busyState(index) : allOnState(index);
  }
  const dimmed = [...duties].filter(([, duty]) => duty < 1);
  const dutyText = dimmed.map(([id, duty]) => `${id} at ${Math.round(duty * 1000) / 10} %`).join(", ");
  return {
    ...base,
    name: dutyText === "" ? base.name : `${base.name}; ${dutyText}`,
    on: new Set([...base.on, ...duties.keys()]),
    ...(dimmed.length > 0 ? { dutyRatio: new Map(dimmed) } : {}),
    ...(flag(values, "charger") ? { chargerOn: true } : {}),
    ...(flag(values, "engine") ? { engineOn: true } : {}),
    ...(charge === undefined ? {} : { chargeRatio: ratioOf(`--charge ${charge}`, charge, "a state of charge", true) }),
  };
}

/** The state in words, with what feeds the coach. */
export function stateText(state: CoachState): string {
  const feeds = ["battery", ...(state.chargerOn ? ["charger"] : []), ...(state.engineOn ? ["engine"] : [])];
  const charge = state.chargeRatio === undefined ? "" : `, ${Math.round(state.chargeRatio * 1000) / 10} % charged`;
  return `${state.name}; on ${feeds.join(", ")}${charge}`;
}
