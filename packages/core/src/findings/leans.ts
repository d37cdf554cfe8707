import type { Cable, Circuit, Load, WireRun } from "../record/index.js";
import type { CoachContext, ConductorLimit } from "./context.js";
import type { Leaned } from "./settle.js";

/** The field that says what a load draws: amps where given, else watts, else amps to be read. */
export function drawOf(context: CoachContext, load: Load): Leaned {
  const path = context.index.pathOf("loads", load.id);
  const byPower = load.currentA === undefined && load.powerW !== undefined;
  return {
    path: `${path}.${byPower ? "powerW" : "currentA"}`,
    figure: byPower ? load.powerW : load.currentA,
    instrument: "clamp meter",
    place: load.place,
  };
}

/** The loads of a circuit that are on the record. */
export const loadsOf = (context: CoachContext, circuit: Circuit): Load[] =>
  (circuit.loads ?? []).flatMap((id) => context.index.loads.get(id) ?? []);

/** What the current of a circuit leans on: the draw of each of its loads. */
export const drawsOf = (context: CoachContext, circuit: Circuit): Leaned[] =>
  loadsOf(context, circuit).map((load) => drawOf(context, load));

/** What the resistance of a wire leans on. */
export function runLeans(run: WireRun | Cable, path: string): Leaned[] {
  if (run.resistanceOhm !== undefined)
    return [{ path: `${path}.resistanceOhm`, figure: run.resistanceOhm, instrument: "ohmmeter", place: run.place }];
  const length: Leaned = {
    path: `${path}.lengthM`,
    figure: run.lengthM,
    instrument: "tape measure",
    place: run.place,
  };
  if (run.sectionMm2 === undefined) return [length];
  return [length, { path: `${path}.sectionMm2`, figure: run.sectionMm2, instrument: "look", place: run.place }];
}

/** What a conductor's limit leans on: the fields that its engine says would narrow it, and the size itself where that was not read off the wire. */
export function limitLeans(run: WireRun | Cable, path: string, limit: Pick<ConductorLimit, "wouldSettle">): Leaned[] {
  const fields = new Set(limit.wouldSettle);
  const isGuessed = run.gauge !== undefined && typeof run.gauge !== "string" && run.gauge.basis !== "measured";
  if (isGuessed && run.sectionMm2 === undefined) fields.add("gauge");
  for (const field of ["sectionMm2", "insulationC", "bundleCount"] as const)
    if (run[field] !== undefined) fields.add(field);
  return [...fields].map((field) => ({
    path: `${path}.${field}`,
    figure: field === "sectionMm2" || field === "insulationC" || field === "bundleCount" ? run[field] : undefined,
    instrument: "look",
    place: run.place,
  }));
}
