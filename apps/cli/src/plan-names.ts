import type { CircuitId, CoachIndex, LoadId, ModuleId, ModuleKindId } from "@fusebook/core/record";
import { Misuse } from "./misuse.js";
import { meantBy, type Named } from "./nearest.js";

/** Something of the record that a lock or a question may name. */
export type Subject =
  | { readonly sort: "module"; readonly id: ModuleId }
  | { readonly sort: "circuit"; readonly id: CircuitId }
  | { readonly sort: "load"; readonly id: LoadId };

interface NamedSubject extends Named {
  readonly subject: Subject;
}

const words = (...names: readonly (string | undefined)[]): string[] =>
  names.filter((name): name is string => name !== undefined && name !== "");

export const namedModules = (index: CoachIndex): NamedSubject[] =>
  [...index.modules.values()].map((module) => ({
    id: module.id,
    names: words(module.name),
    subject: { sort: "module", id: module.id },
  }));

export const namedLoads = (index: CoachIndex): NamedSubject[] =>
  [...index.loads.values()].map((load) => ({
    id: load.id,
    names: words(load.name),
    subject: { sort: "load", id: load.id },
  }));

const namedCircuits = (index: CoachIndex): NamedSubject[] =>
  [...index.circuits.values()].map((circuit) => ({
    id: circuit.id,
    names: words(circuit.name, circuit.label),
    subject: { sort: "circuit", id: circuit.id },
  }));

const said = (things: readonly Named[]): string =>
  things.map((thing) => (thing.names[0] === undefined ? thing.id : `${thing.id} (${thing.names[0]})`)).join(", ");

/** What one of these words means, or a misuse that names what comes nearest. `more`: what else the option takes. */
function found<T extends Named>(option: string, asked: string, what: string, things: readonly T[], more = ""): T {
  const meant = meantBy(asked, things);
  if ("found" in meant) return meant.found;
  const near = meant.nearest.length > 0 ? said(meant.nearest) : said(things.slice(0, 5)) || "none";
  throw new Misuse(
    `--${option} ${asked}: the record has no ${what} of that name; ${meant.nearest.length > 0 ? "nearest" : "it has"}: ${near}${more}`,
  );
}

/** The module, circuit or load that is meant: an exact name wins, in that order. */
export function subjectMeant(index: CoachIndex, option: string, asked: string): Subject {
  const sorts = [namedModules(index), namedLoads(index), namedCircuits(index)];
  for (const things of sorts) {
    const meant = meantBy(asked, things);
    if ("found" in meant) return meant.found.subject;
  }
  return found(option, asked, "module, circuit or load", sorts.flat()).subject;
}

export const moduleMeant = (index: CoachIndex, option: string, asked: string): ModuleId =>
  found(option, asked, "module", namedModules(index)).subject.id as ModuleId;

export const loadMeant = (index: CoachIndex, option: string, asked: string): LoadId =>
  found(option, asked, "load", namedLoads(index)).subject.id as LoadId;

/** A module kind by id or name; other words that the option takes too are named in the refusal. */
export function kindMeant(index: CoachIndex, option: string, asked: string, others: readonly string[]): ModuleKindId {
  const kinds = [...index.moduleKinds.values()].map((kind) => ({ id: kind.id, names: words(kind.name) }));
  const more = others.length === 0 ? "" : `; or one of ${others.join(", ")}`;
  return found(option, asked, "module kind", kinds, more).id;
}
