import { MAX_COLUMNS, MAX_ROWS } from "./bounds.js";
import { cellOf } from "./column-name.js";
import { readXml } from "./read-xml.js";
import type { NumberStyle, Workbook } from "./workbook-parts.js";

/** A cell that holds something. Row from 1, column from 0. */
export interface SheetCell {
  readonly row: number;
  readonly column: number;
  readonly text: string;
  readonly formula?: string;
  /** Why its text could not be had. */
  readonly unread?: string;
}

/** A range of merged cells, ends included. */
export interface Merge {
  readonly range: string;
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
}

export interface SheetCells {
  readonly cells: readonly SheetCell[];
  readonly merges: readonly Merge[];
  /** The first cell past the bounds, where there is one; reading went no further. */
  readonly tooFar: string | undefined;
}

const NO_VALUE =
  "a formula without a kept value: nothing is computed here; type its value, or open and save the file in a spreadsheet program";
const MS_PER_DAY = 86_400_000;
/** Days from the spreadsheet's zero to 1970-01-01, and what the 1904 count adds. */
const DAYS_TO_1970 = 25_569;
const DAYS_1904 = 1_462;

const dateText = (serial: number, isFrom1904: boolean): string => {
  const days = serial + (isFrom1904 ? DAYS_1904 : 0);
  const iso = new Date(Math.round((days - DAYS_TO_1970) * MS_PER_DAY));
  if (Number.isNaN(iso.getTime())) return String(serial);
  const [date = "", time = ""] = iso.toISOString().split("T");
  const clock = time.slice(0, 5);
  if (serial < 1) return clock;
  return clock === "00:00" ? date : `${date} ${clock}`;
};

/** A number as a person reads it: at most fifteen digits, as spreadsheets keep them, with the sign its format puts after it. */
const numberText = (value: string, style: NumberStyle | undefined, isFrom1904: boolean): string => {
  const number = Number(value);
  if (!Number.isFinite(number)) return value;
  if (style?.isDate === true) return dateText(number, isFrom1904);
  const plain = (of: number) => String(Number(of.toPrecision(15)));
  return style?.isPercent === true ? `${plain(number * 100)}%` : `${plain(number)}${style?.suffix ?? ""}`;
};

const mergeOf = (range: string): Merge | undefined => {
  const [from, to] = range.split(":").map(cellOf);
  return from && to ? { range, top: from.row, left: from.column, bottom: to.row, right: to.column } : undefined;
};

/** Reads the cells of one sheet that hold something. Styled but empty cells, however far out, cost nothing. */
export function sheetCellsOf(xml: string, workbook: Workbook): SheetCells {
  const cells: SheetCell[] = [];
  const merges: Merge[] = [];
  let tooFar: string | undefined;
  let row = 0;
  let column = -1;
  let place = "";
  let type = "";
  let style: NumberStyle | undefined;
  let value: string | undefined;
  let formula: string | undefined;
  let inside: "v" | "f" | "t" | "" = "";

  const textOf = (): string => {
    if (value === undefined) return "";
    if (type === "s") return workbook.sharedStrings[Number(value)] ?? "";
    if (type === "b") return value === "1" ? "TRUE" : value === "0" ? "FALSE" : value;
    return type === "" || type === "n" ? numberText(value, style, workbook.isFrom1904) : value;
  };
  const finish = (): void => {
    const isEmpty = value === undefined || (value === "" && type !== "s");
    const text = textOf();
    if (text.trim() === "" && formula === undefined) return;
    // A formula that gives an empty text is an empty cell, if it says so.
    if (formula !== undefined && type === "str" && value === "") return;
    if (row > MAX_ROWS * 2 || column >= MAX_COLUMNS || cells.length >= MAX_ROWS * 32) {
      tooFar ??= place;
      return;
    }
    const isError = type === "e" || /^#(?:REF!|DIV\/0!|N\/A|NAME\?|NULL!|NUM!|VALUE!)$/.test(text);
    if (formula === undefined && !isError) cells.push({ row, column, text });
    else if (isError)
      cells.push({
        row,
        column,
        text,
        ...(formula === undefined ? {} : { formula: `=${formula}` }),
        unread: `the spreadsheet shows the error ${text}: correct the formula there, or type the value`,
      });
    else if (isEmpty) cells.push({ row, column, text: `=${formula}`, formula: `=${formula}`, unread: NO_VALUE });
    else cells.push({ row, column, text, formula: `=${formula}` });
  };

  readXml(xml, {
    open(name, attribute) {
      if (name === "row") {
        row = Number(attribute("r") ?? row + 1);
        column = -1;
      } else if (name === "c") {
        place = attribute("r") ?? "";
        const at = cellOf(place);
        column = at?.column ?? column + 1;
        if (at !== undefined) row = at.row;
        type = attribute("t") ?? "";
        style = workbook.styles[Number(attribute("s") ?? -1)];
        value = undefined;
        formula = undefined;
      } else if (name === "v") {
        inside = "v";
        value = "";
      } else if (name === "f") {
        inside = "f";
        formula = "";
      } else if (name === "t" && type === "inlineStr") {
        inside = "t";
        value ??= "";
      } else if (name === "mergeCell") {
        const merge = mergeOf(attribute("ref") ?? "");
        if (merge !== undefined) merges.push(merge);
      }
    },
    close(name) {
      if (name === "c") finish();
      if (name === "v" || name === "f" || name === "t") inside = "";
    },
    text(part) {
      if (inside === "v" || inside === "t") value = (value ?? "") + part;
      else if (inside === "f") formula = (formula ?? "") + part;
    },
  });
  return { cells, merges, tooFar };
}
