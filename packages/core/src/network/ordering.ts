import { Arena } from "./arena.js";

/** Edges of the pattern of a symmetric matrix, each pair once or more, in any order. */
export interface SymmetricPattern {
  readonly size: number;
  readonly rows: ArrayLike<number>;
  readonly columns: ArrayLike<number>;
}

/**
 * In which order to eliminate the unknowns of a sparse symmetric system so that little fills in: always the one with the fewest neighbours left
 * (minimum degree). A tree fills in nothing. Returns the unknowns in order of elimination.
 *
 * Ends and links of chains, which is most of a coach, change their neighbours' lists in place; only what has three neighbours or more adds to them.
 */
export function minimumDegreeOrder(pattern: SymmetricPattern, arena = new Arena()): Int32Array {
  const { size, rows, columns } = pattern;
  const start = arena.i32(size + 1);
  for (let e = 0; e < rows.length; e++)
    if (rows[e] !== columns[e]) {
      start[rows[e]! + 1]!++;
      start[columns[e]! + 1]!++;
    }
  for (let i = 0; i < size; i++) start[i + 1]! += start[i]!;
  const list = arena.i32(start[size]!);
  const end = arena.i32(size);
  end.set(start.subarray(0, size));
  for (let e = 0; e < rows.length; e++) {
    const a = rows[e]!;
    const b = columns[e]!;
    if (a === b) continue;
    list[end[a]!++] = b;
    list[end[b]!++] = a;
  }
  const added: (number[] | undefined)[] = new Array(size).fill(undefined);
  const isGone = arena.u8(size);
  const mark = arena.i32(size).fill(-1);
  const around = arena.i32(size);
  // Unknowns by degree, as doubly linked lists. A degree may be an overestimate where a name appears twice; it is put right when walked.
  const head = arena.i32(size + 1).fill(-1);
  const next = arena.i32(size);
  const previous = arena.i32(size);
  const degree = arena.i32(size);
  const insert = (i: number, d: number) => {
    degree[i] = d;
    const first = head[d]!;
    next[i] = first;
    previous[i] = -1;
    if (first >= 0) previous[first] = i;
    head[d] = i;
  };
  const remove = (i: number) => {
    const p = previous[i]!;
    const n = next[i]!;
    if (p >= 0) next[p] = n;
    else head[degree[i]!] = n;
    if (n >= 0) previous[n] = p;
  };
  for (let i = size - 1; i >= 0; i--) insert(i, Math.min(size, end[i]! - start[i]!));
  let stamp = 0;
  /** Puts the neighbours still there, each once, into `around`; returns how many. */
  const walk = (i: number): number => {
    stamp++;
    mark[i] = stamp;
    let count = 0;
    for (let e = start[i]!; e < end[i]!; e++) {
      const j = list[e]!;
      if (isGone[j] || mark[j] === stamp) continue;
      mark[j] = stamp;
      around[count++] = j;
    }
    const more = added[i];
    if (more)
      for (let e = 0; e < more.length; e++) {
        const j = more[e]!;
        if (isGone[j] || mark[j] === stamp) continue;
        mark[j] = stamp;
        around[count++] = j;
      }
    return count;
  };
  /** In the list of `a`, `other` takes the place of what is gone. */
  const replace = (a: number, gone: number, other: number) => {
    for (let e = start[a]!; e < end[a]!; e++)
      if (list[e] === gone) {
        list[e] = other;
        return;
      }
    const more = added[a];
    if (more) more.push(other);
    else added[a] = [other];
  };
  const order = arena.i32(size);
  let least = 0;
  for (let done = 0; done < size; ) {
    while (head[least]! < 0) least++;
    const pivot = head[least]!;
    remove(pivot);
    const count = walk(pivot);
    if (count < degree[pivot]!) {
      // Its degree was overestimated: put it back where it belongs.
      insert(pivot, count);
      least = Math.min(least, count);
      continue;
    }
    order[done++] = pivot;
    isGone[pivot] = 1;
    if (count === 2) {
      replace(around[0]!, pivot, around[1]!);
      replace(around[1]!, pivot, around[0]!);
      continue;
    }
    for (let i = 0; i < count; i++) {
      const a = around[i]!;
      if (count > 2) {
        const more = added[a] ?? [];
        added[a] = more;
        for (let j = 0; j < count; j++) if (j !== i) more.push(around[j]!);
      }
      remove(a);
      // One neighbour goes, at most all the others come.
      const d = Math.min(size, Math.max(0, degree[a]! + count - 2));
      insert(a, d);
      if (d < least) least = d;
    }
  }
  return order;
}
