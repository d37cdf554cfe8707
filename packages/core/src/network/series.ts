import type { Outcome, Span } from "../quantity/index.js";
import type { DropPlace } from "./results.js";
import type { OhmDraw } from "./sampling/ohm-draw.js";

/** One resistance on the way, at a place of the coach. */
export interface Piece {
  readonly place: DropPlace;
  readonly ohm: number;
  readonly span: Span;
  /** The record object it belongs to. */
  readonly id: string;
  /** The figures it is made of. */
  readonly draw: OhmDraw;
}

/** Pieces one after another, solved as one branch. */
export interface Series {
  readonly pieces: readonly Piece[];
  readonly ohm: number;
  readonly span: Span;
}

/** The least a way through copper is taken to measure: a micro-ohm, below what any meter on a coach can tell. */
export const LEAST_OHM = 1e-6;

/** Adds pieces up; a way below `LEAST_OHM` is taken at that. */
export function series(pieces: readonly Piece[]): Series {
  const total = (of: (piece: Piece) => number) => pieces.reduce((ohm, piece) => ohm + of(piece), 0);
  const ohm = total((piece) => piece.ohm);
  const span = {
    lo: Math.max(
      LEAST_OHM,
      total((piece) => piece.span.lo),
    ),
    hi: Math.max(
      LEAST_OHM,
      total((piece) => piece.span.hi),
    ),
  };
  if (ohm >= LEAST_OHM) return { pieces, ohm, span };
  const [first, ...rest] = pieces;
  const short = LEAST_OHM - ohm;
  return { pieces: first ? [{ ...first, ohm: first.ohm + short }, ...rest] : [], ohm: LEAST_OHM, span };
}

/** Collects the pieces of a way; what is not known goes to `needs`. */
export class Way {
  readonly pieces: Piece[] = [];
  readonly needs: string[] = [];

  add(place: DropPlace, id: string, found: Outcome<Pick<Piece, "ohm" | "span" | "draw">>, pathIfRefused: string): void {
    if (found.kind === "known") this.put(place, id, found.value);
    else if (found.kind === "missing") this.needs.push(...found.needs);
    else this.needs.push(pathIfRefused);
  }

  put(place: DropPlace, id: string, { ohm, span, draw }: Pick<Piece, "ohm" | "span" | "draw">): void {
    this.pieces.push({ place, id, ohm, span, draw });
  }

  get isKnown(): boolean {
    return this.needs.length === 0;
  }
}
