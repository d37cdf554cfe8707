import { type Figure, figureBasis, figureValue } from "../../quantity/index.js";
import { type NotedText, textValue } from "../schema/figure.js";
import type { Circuit, CoachRecord, Load, Module, Place } from "../schema/types.js";

/** The parts of a record that an import may add to or change, by id, in order. Things given are never changed in place. */
export interface Draft {
  readonly base: CoachRecord;
  readonly circuits: Map<string, Circuit>;
  readonly loads: Map<string, Load>;
  readonly modules: Map<string, Module>;
  readonly places: Map<string, Place>;
}

const byId = <T extends { id: string }>(items: readonly T[] | undefined): Map<string, T> =>
  new Map((items ?? []).map((item) => [item.id as string, item]));

export const draftOf = (base: CoachRecord): Draft => ({
  base,
  circuits: byId(base.circuits),
  loads: byId(base.loads),
  modules: byId(base.modules),
  places: byId(base.places),
});

const RANK = { assumed: 0, typical: 1, marked: 2, measured: 3 } as const;
const FIGURE_FIELDS = ["value", "basis", "plusMinus", "at", "by", "note"];

/** What becomes of a field that the record has already. `kept`: the record knows it on a better basis. */
export type Merged<T> = { readonly kind: "set" | "same" | "kept"; readonly value: T };

/** A figure of the survey laid over the record's: the better basis wins; on the same basis the survey does. */
export function mergeFigure(old: Figure | undefined, next: Figure): Merged<Figure> {
  if (old === undefined) return { kind: "set", value: next };
  const oldRank = RANK[figureBasis(old)];
  const nextRank = RANK[figureBasis(next)];
  const plusMinus = typeof next === "number" ? undefined : next.plusMinus;
  const isSameSpread = plusMinus === undefined || (typeof old !== "number" && old.plusMinus === plusMinus);
  if (figureValue(old) === figureValue(next) && nextRank <= oldRank && isSameSpread)
    return { kind: "same", value: old };
  if (nextRank < oldRank) return { kind: "kept", value: old };
  // Fields that no format names are kept even when the figure is replaced.
  const unknown = typeof old === "number" ? [] : Object.entries(old).filter(([name]) => !FIGURE_FIELDS.includes(name));
  if (unknown.length === 0) return { kind: "set", value: next };
  const plain = typeof next === "number" ? { value: next, basis: "marked" as const } : next;
  return { kind: "set", value: { ...Object.fromEntries(unknown), ...plain } as Figure };
}

/** A word of the survey laid over the record's, as for figures. `isSame` says when two spellings mean one thing. */
export function mergeText(
  old: NotedText | undefined,
  next: NotedText,
  isSame: (a: string, b: string) => boolean,
): Merged<NotedText> {
  if (old === undefined) return { kind: "set", value: next };
  const basisOf = (text: NotedText) => RANK[typeof text === "string" ? "marked" : text.basis];
  if (isSame(textValue(old), textValue(next)) && basisOf(next) <= basisOf(old)) return { kind: "same", value: old };
  if (basisOf(next) < basisOf(old)) return { kind: "kept", value: old };
  return { kind: "set", value: next };
}

/** A note with a line added, unless it is there already. */
export const withNote = (notes: string | undefined, line: string): string => {
  if (notes === undefined || notes === "") return line;
  return `\n${notes}\n`.includes(`\n${line}\n`) ? notes : `${notes}\n${line}`;
};

/** A note without a line. */
export const withoutNote = (notes: string | undefined, line: string): string | undefined => {
  const left = (notes ?? "").split("\n").filter((item) => item !== line);
  return left.length === 0 || left.join("") === "" ? undefined : left.join("\n");
};
