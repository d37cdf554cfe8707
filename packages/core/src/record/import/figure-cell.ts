import { type Basis, type Dimension, type Figure, readQuantity } from "../../quantity/index.js";
import type { ColumnMapping } from "./propose.js";

export interface Unreadable {
  readonly kind: "unread";
  readonly code: string;
  readonly why: string;
}

/** A figure read from a cell. `takenUnit`: no unit was written, this one was taken. */
export interface FigureCell {
  readonly kind: "figure";
  readonly value: number;
  readonly basis: Basis | undefined;
  readonly plusMinus: number | undefined;
  readonly note: string | undefined;
  readonly share: "each" | "total" | undefined;
}

export interface CellReading {
  readonly decimalSign: "." | ",";
  /** What a length without a unit is taken to be in. */
  readonly bareLengthUnit: "ft" | "m";
}

const TOTAL = /\(?\b(?:total|in all|all together|altogether|all)\b\)?/i;
const EACH = /\(?\b(?:each|ea\b\.?|apiece|per (?:piece|lamp|unit|one))\)?/i;
const METER = /\(?\b(?:by |with |on )?(?:clamp|meter)(?: meter)?(?: reading)?\b\)?/i;

/** The decimal mark brought to a point where the file uses a comma. */
export const withPoint = (text: string, decimalSign: "." | ","): string =>
  decimalSign === "," ? text.replace(/(\d)\.(?=\d{3}(?!\d))/g, "$1").replace(/(\d),(?=\d)/g, "$1.") : text;

/** Reads the figure in a cell: unit as written, else the heading's, else the usual one; basis as written, else the heading's. */
export function readFigureCell(
  text: string,
  dimension: Dimension,
  column: Pick<ColumnMapping, "unit" | "basis" | "share">,
  reading: CellReading,
): FigureCell | Unreadable {
  const isTotal = TOTAL.test(text);
  const isEach = EACH.test(text);
  const isMetered = METER.test(text);
  const plain = withPoint(text, reading.decimalSign).replace(TOTAL, " ").replace(EACH, " ").replace(METER, " ").trim();
  const bareUnit = column.unit ?? (dimension === "length" ? reading.bareLengthUnit : undefined);
  const read = readQuantity(plain, dimension, bareUnit === undefined ? {} : { bareUnit });
  // A heading's unit may be of another dimension (`Wire (14 AWG), Length`): then only written units count.
  const again =
    read.kind === "unread" && read.code === "unit-missing" && bareUnit !== undefined
      ? readQuantity(plain, dimension, dimension === "length" ? { bareUnit: reading.bareLengthUnit } : {})
      : read;
  if (again.kind === "unread") return { kind: "unread", code: again.code, why: again.why };
  if (again.value < 0) return { kind: "unread", code: "negative", why: "a figure of the survey cannot be negative" };
  const isTaken = dimension === "length" && again.isUnitTaken && again.unit !== column.unit && again.value !== 0;
  const said = isMetered ? "measured" : (again.basis ?? column.basis);
  return {
    kind: "figure",
    value: again.value,
    basis: isTaken
      ? "assumed"
      : (said ?? (again.plusMinus === undefined || /±|\+\/?-/.test(text) ? undefined : "assumed")),
    plusMinus: again.plusMinus,
    note: isTaken ? `written "${text}" without a unit, taken as ${again.unit}` : undefined,
    share: isTotal ? "total" : isEach ? "each" : column.share,
  };
}

/** A figure as the record keeps it: bare where nothing more is known than that it was marked. */
export const figureOf = (
  cell: FigureCell,
  scale: { readonly by: number; readonly note: string } | undefined,
): Figure => {
  const by = scale?.by ?? 1;
  const note = [cell.note, scale?.note].filter((part) => part !== undefined).join("; ");
  if ((cell.basis ?? "marked") === "marked" && cell.plusMinus === undefined && note === "") return cell.value / by;
  return {
    value: cell.value / by,
    basis: cell.basis ?? "marked",
    ...(cell.plusMinus === undefined ? {} : { plusMinus: cell.plusMinus / by }),
    ...(note === "" ? {} : { note }),
  };
};
