import { Arena } from "./arena.js";
import { minimumDegreeOrder } from "./ordering.js";

/**
 * Sparse symmetric factorisation A = L D L^T with a fill-reducing order. The pattern is worked out once; `factor` and `solve` then allocate nothing.
 * Off-diagonal entries are given once each as (row, column) pairs in any order; values are set by the caller in `diagonal` and `offDiagonal`.
 */
export class SparseLdl {
  readonly size: number;
  /** Values to factor, by unknown. */
  readonly diagonal: Float64Array;
  /** Values to factor, by pair as given. */
  readonly offDiagonal: Float64Array;
  private readonly place: Int32Array;
  private readonly order: Int32Array;
  /** By elimination step: its upper entries (rows of earlier steps) and the pair that each comes from. */
  private readonly upStart: Int32Array;
  private readonly upRow: Int32Array;
  private readonly upPair: Int32Array;
  /** By row of L: its columns, in the order they are taken. */
  private readonly rowStart: Int32Array;
  private readonly row: Int32Array;
  private readonly lStart: Int32Array;
  /** Where each column of L starts, without the end of the last. */
  private readonly lFirst: Int32Array;
  private readonly lFilled: Int32Array;
  private readonly lRow: Int32Array;
  private readonly lValue: Float64Array;
  private readonly d: Float64Array;
  private readonly work: Float64Array;
  private readonly permuted: Float64Array;

  constructor(size: number, rows: ArrayLike<number>, columns: ArrayLike<number>, arena = new Arena()) {
    const pairs = rows.length;
    this.size = size;
    this.diagonal = arena.f64(size);
    this.offDiagonal = arena.f64(pairs);
    this.order = minimumDegreeOrder({ size, rows, columns }, arena);
    this.place = arena.i32(size);
    for (let k = 0; k < size; k++) this.place[this.order[k]!] = k;
    const { place } = this;
    this.upStart = arena.i32(size + 1);
    for (let p = 0; p < pairs; p++) this.upStart[Math.max(place[rows[p]!]!, place[columns[p]!]!) + 1]!++;
    for (let k = 0; k < size; k++) this.upStart[k + 1]! += this.upStart[k]!;
    const fill = arena.i32(size);
    fill.set(this.upStart.subarray(0, size));
    this.upRow = arena.i32(pairs);
    this.upPair = arena.i32(pairs);
    for (let p = 0; p < pairs; p++) {
      const a = place[rows[p]!]!;
      const b = place[columns[p]!]!;
      const at = fill[Math.max(a, b)]!++;
      this.upRow[at] = Math.min(a, b);
      this.upPair[at] = p;
    }
    this.rowStart = arena.i32(size + 1);
    this.lStart = arena.i32(size + 1);
    const { row, column } = this.eliminate(arena);
    this.row = row;
    this.lRow = column;
    this.lFirst = this.lStart.subarray(0, size);
    this.lFilled = arena.i32(size);
    this.lValue = arena.f64(column.length);
    this.d = arena.f64(size);
    this.work = arena.f64(size);
    this.permuted = arena.f64(size);
  }

  /** The pattern of L once and for all: the columns of each row in the order they must be taken, and the rows of each column. */
  private eliminate(arena: Arena): { row: Int32Array; column: Int32Array } {
    const { size, upStart, upRow, rowStart, lStart } = this;
    const parent = arena.i32(size).fill(-1);
    const mark = arena.i32(size).fill(-1);
    const stack = arena.i32(size);
    const rows: number[] = [];
    for (let k = 0; k < size; k++) {
      mark[k] = k;
      let top = size;
      for (let p = upStart[k]!; p < upStart[k + 1]!; p++) {
        // Up the elimination tree from each entry; what is met first is taken last.
        let length = 0;
        for (let i = upRow[p]!; mark[i] !== k; i = parent[i]!) {
          if (parent[i]! < 0) parent[i] = k;
          stack[length++] = i;
          mark[i] = k;
        }
        while (length > 0) stack[--top] = stack[--length]!;
      }
      for (; top < size; top++) {
        rows.push(stack[top]!);
        lStart[stack[top]! + 1]!++;
      }
      rowStart[k + 1] = rows.length;
    }
    for (let k = 0; k < size; k++) lStart[k + 1]! += lStart[k]!;
    const filled = arena.i32(size);
    filled.set(lStart.subarray(0, size));
    const column = arena.i32(rows.length);
    for (let k = 0; k < size; k++)
      for (let p = rowStart[k]!; p < rowStart[k + 1]!; p++) column[filled[rows[p]!]!++] = k;
    const row = arena.i32(rows.length);
    row.set(rows);
    return { row, column };
  }

  /** Factors the values now in `diagonal` and `offDiagonal`. False where a pivot is not above zero: the matrix is not positive definite. */
  factor(): boolean {
    const { size, order, diagonal, offDiagonal, upStart, upRow, upPair, rowStart, row } = this;
    const { lStart, lFilled, lRow, lValue, d, work } = this;
    lFilled.set(this.lFirst);
    for (let k = 0; k < size; k++) {
      for (let p = upStart[k]!; p < upStart[k + 1]!; p++) work[upRow[p]!]! += offDiagonal[upPair[p]!]!;
      let pivot = diagonal[order[k]!]!;
      for (let r = rowStart[k]!; r < rowStart[k + 1]!; r++) {
        const i = row[r]!;
        const y = work[i]!;
        work[i] = 0;
        const end = lFilled[i]!;
        for (let q = lStart[i]!; q < end; q++) work[lRow[q]!]! -= lValue[q]! * y;
        const l = y / d[i]!;
        pivot -= l * y;
        lValue[end] = l;
        lFilled[i] = end + 1;
      }
      if (!(pivot > 0)) {
        work.fill(0);
        return false;
      }
      d[k] = pivot;
    }
    return true;
  }

  /** Solves A x = b after `factor`; `x` may be `b`. */
  solve(b: Float64Array, x: Float64Array): void {
    const { size, order, lStart, lRow, lValue, d, permuted } = this;
    for (let k = 0; k < size; k++) permuted[k] = b[order[k]!]!;
    for (let k = 0; k < size; k++) {
      const y = permuted[k]!;
      if (y !== 0) for (let q = lStart[k]!; q < lStart[k + 1]!; q++) permuted[lRow[q]!]! -= lValue[q]! * y;
    }
    for (let k = size - 1; k >= 0; k--) {
      let y = permuted[k]! / d[k]!;
      for (let q = lStart[k]!; q < lStart[k + 1]!; q++) y -= lValue[q]! * permuted[lRow[q]!]!;
      permuted[k] = y;
    }
    for (let k = 0; k < size; k++) x[order[k]!] = permuted[k]!;
  }
}
