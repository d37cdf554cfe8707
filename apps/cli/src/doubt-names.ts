import type { ReadableFigure, ReadingCaution } from "@fusebook/core/doubt";
import { fieldWords } from "@fusebook/core/findings";
import { kindOfField, showQuantity } from "@fusebook/core/quantity";
import type { CoachIndex } from "@fusebook/core/record";
import { Misuse } from "./misuse.js";
import { meantBy, type Named } from "./nearest.js";
import type { Units } from "./records.js";

interface Owner {
  readonly id: string;
  readonly name?: string | undefined;
  readonly label?: string | undefined;
}

const RUN: Readonly<Record<string, string>> = { out: ", wire out", return: ", wire back", tail: ", its own wire" };

/** Whose figure it is: `Galley ceiling, wire out`. */
export function ownerWords(index: CoachIndex, path: string): string {
  const found = /^([a-zA-Z]+)\[(\d+)\](?:\.(out|return|tail|fuse|protection|connectors))?/.exec(path);
  if (found === null) return path;
  const [, collection, n, part] = found as unknown as [string, string, string, string | undefined];
  const owners = index.record[collection as keyof typeof index.record] as readonly Owner[] | undefined;
  const owner = owners?.[Number(n)];
  const name = owner?.name ?? (owner?.label || undefined) ?? owner?.id ?? path;
  const called = owner === undefined || name === owner.id ? name : `${name} (${owner.id})`;
  const what = part === "fuse" || part === "protection" ? ", its fuse" : part === "connectors" ? ", a connector" : "";
  return `${called}${part === undefined ? "" : (RUN[part] ?? what)}`;
}

/** A reading as one line of a list: what, of what. */
export const readingWords = (index: CoachIndex, path: string): string =>
  `${fieldWords(path)}: ${ownerWords(index, path)}`;

/** Where it is read; the record may name no place. */
export const placeWords = (index: CoachIndex, place: string | undefined): string =>
  place === undefined ? "place not on record" : (index.places.get(place)?.name ?? place);

export const CAUTION_WORDS: Readonly<Record<ReadingCaution, string>> = {
  "power-off-first": "power off and proved dead first, every supply",
  "load-will-move": "it will move or pump: clear it first",
  "load-gets-hot": "it gets hot",
  "live-parts": "live parts: no rings, no loose tools",
  none: "",
};

const DIMENSION = {
  current: "current",
  power: "power",
  voltage: "voltage",
  length: "length",
  section: "section",
  resistance: "resistance",
  rating: "current",
} as const;

/** A figure's value in the reader's units, by the field it stands in. */
export function figureText(path: string, value: number, units: Units): string {
  if (/\.(insulationC)$/.test(path)) return `${value} °C`;
  if (/\.gauge$/.test(path)) return showQuantity(value, "section", units);
  if (/\.(minV|maxV|ratedV)$/.test(path)) return showQuantity(value, "voltage", units);
  const kind = kindOfField(path);
  const dimension = kind in DIMENSION ? DIMENSION[kind as keyof typeof DIMENSION] : undefined;
  return dimension === undefined ? String(Number(value.toPrecision(3))) : showQuantity(value, dimension, units);
}

/** `1.2 A to 1.8 A`, or the one value. */
export const spanText = (figure: ReadableFigure, of: "now" | "left", units: Units): string => {
  const { path, printed } = figure;
  if (printed !== undefined)
    return of === "now"
      ? printed.map((one) => (typeof one === "number" ? figureText(path, one, units) : one)).join(", ")
      : "what is printed";
  const { lo, hi } = figure[of];
  const [from, to] = [figureText(path, lo, units), figureText(path, hi, units)];
  return from === to ? from : `${from} to ${to}`;
};

/** Everything of the record that a verdict may be about, by what it may be called. */
const subjectsOf = (index: CoachIndex): Named[] =>
  (["circuits", "loads", "modules", "cables", "supplies", "nodes"] as const).flatMap((collection) =>
    [...(index[collection] as ReadonlyMap<string, Owner>).values()].map(({ id, name, label }) => ({
      id,
      names: [name ?? "", label ?? ""].filter((one) => one !== ""),
    })),
  );

/** The id meant by these words, or a misuse naming the nearest. */
export function subjectMeant(index: CoachIndex, asked: string): string {
  const meant = meantBy(asked, subjectsOf(index));
  if ("found" in meant) return meant.found.id;
  const nearest = meant.nearest.map(({ id, names }) => (names.length > 0 ? `${id} (${names[0]})` : id)).join(", ");
  throw new Misuse(
    `no one circuit, load, module, cable or supply is called "${asked}"${nearest === "" ? "" : `; nearest: ${nearest}`}`,
  );
}
