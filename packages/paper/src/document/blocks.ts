import type { FusePatch } from "../drawings/fuse-patch.js";

/** A picture with what it shows in words, for who cannot see it. */
export interface Drawing {
  readonly svg: string;
  readonly alt: string;
  /** Width on the page; the height follows the drawing. */
  readonly widthMm: number;
}

/** A figure or text with what stands in small type under it: its basis, span or source. */
export interface Noted {
  readonly text: string;
  readonly under?: string;
  readonly strong?: boolean;
}

/** What a table cell may hold. `field` is an empty line to write on, with the unit at its end. */
export type Cell =
  | string
  | Noted
  | FusePatch
  | { readonly field: string }
  | { readonly tick: true }
  | { readonly drawing: Drawing };

export interface Column {
  readonly title: string;
  readonly align?: "left" | "right" | "center";
  /** Share of the free width; as wide as its content where absent. */
  readonly share?: number;
}

export interface ExpectedLine {
  readonly what: string;
  readonly value: string;
  readonly span: string;
  readonly unit: string;
}

export interface StepBlock {
  readonly block: "step";
  readonly number: number;
  readonly text: string;
  readonly detail?: string;
  readonly cautions: readonly string[];
  readonly expect: readonly ExpectedLine[];
  readonly lamps: readonly string[];
  readonly rollBack?: string;
  readonly drawing?: Drawing;
}

/** One line of a label, measured: where it stands follows from the order and the heights. */
export interface LabelLine {
  readonly text: string;
  readonly sizePt: number;
  readonly heightMm: number;
  /** Width before condensing, with a little to spare. */
  readonly naturalMm: number;
  /** Width over natural width: 1, or less where condensed. */
  readonly ratio: number;
  readonly strong: boolean;
}

export interface FittedLabel {
  readonly lines: readonly LabelLine[];
  /** Read from the right: the text runs along the height of the label. */
  readonly turned: boolean;
}

/** A row of labels at true size: each `widthMm` by `heightMm`, one every `pitchMm`. */
export interface StripBlock {
  readonly block: "strip";
  readonly caption: string;
  readonly pitchMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly labels: readonly FittedLabel[];
}

/** The tests of one circuit: kept together on a page. A line without a unit has only its tick. */
export interface CheckGroup {
  readonly number: string;
  readonly where: string;
  readonly cautions: readonly string[];
  readonly lines: readonly {
    readonly what: string;
    readonly expected: string;
    readonly span: string;
    readonly unit: string;
  }[];
}

export type Block =
  | { readonly block: "heading"; readonly level: 1 | 2 | 3; readonly text: string; readonly newPage?: boolean }
  | {
      readonly block: "paragraph";
      readonly text: string;
      readonly manner?: "body" | "lead" | "soft" | "small" | "quote";
    }
  | { readonly block: "list"; readonly items: readonly string[] }
  | {
      readonly block: "table";
      readonly columns: readonly Column[];
      readonly rows: readonly (readonly Cell[])[];
      /** What is said in place of a table without rows. */
      readonly empty: string;
      readonly sizePt?: number;
    }
  | StepBlock
  | { readonly block: "caution"; readonly text: string }
  | { readonly block: "facts"; readonly pairs: readonly (readonly [string, Cell])[]; readonly labelMm?: number }
  | { readonly block: "fields"; readonly fields: readonly string[] }
  | { readonly block: "drawing"; readonly drawing: Drawing; readonly caption?: string }
  | { readonly block: "drawings"; readonly columns: number; readonly drawings: readonly Drawing[] }
  | { readonly block: "checks"; readonly groups: readonly CheckGroup[] }
  | { readonly block: "ruler"; readonly text: string }
  | StripBlock
  | {
      readonly block: "cover";
      readonly eyebrow: string;
      readonly title: string;
      readonly subtitle: string;
      readonly drawing?: Drawing;
      readonly pairs: readonly (readonly [string, Cell])[];
    }
  | { readonly block: "contents" }
  | { readonly block: "break" };

/** A file carried inside the PDF. */
export interface Enclosure {
  readonly name: string;
  readonly mediaType: string;
  readonly description: string;
  readonly bytes: Uint8Array;
}

export const PAPERS = { letter: { widthMm: 215.9, heightMm: 279.4 }, a4: { widthMm: 210, heightMm: 297 } } as const;
export type PaperSize = keyof typeof PAPERS;

/** Left and right margin of every page. */
export const MARGIN_MM = 17;

/** Width between the margins. */
export const bodyWidthMm = (paper: PaperSize): number => PAPERS[paper].widthMm - 2 * MARGIN_MM;

/** A document before it is set. Date and id are given, never taken from a clock. */
export interface PaperDocument {
  readonly title: string;
  readonly description: string;
  readonly language: string;
  /** ISO date, 2026-05-02. */
  readonly date: string;
  /** Stands in the footer and in the PDF's keywords. */
  readonly id: string;
  readonly paper: PaperSize;
  /** Top line of every page. */
  readonly running: string;
  /** A word boxed on every page ("Invented demo"), or empty. */
  readonly mark: string;
  readonly blocks: readonly Block[];
  readonly enclosures: readonly Enclosure[];
}
