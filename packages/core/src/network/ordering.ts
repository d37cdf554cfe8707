/** Edges of the pattern of a symmetric matrix, each pair once or more, in any order. */
export interface SymmetricPattern {
  readonly size: number;
  readonly rows: ArrayLike<number>;
  readonly columns: ArrayLike<number>;
}

/**
 * In which order to eliminate the unknowns of a sparse symmetric system so that little fills in: always the one with the fewest neighbours left
 * (minimum degree). A tree fills in nothing. Returns the unknowns in order of elimination.
 */
export function minimumDegreeOrder(pattern: SymmetricPattern): Int32Array {
  const { size, rows, columns } = pattern;
  const neighbours: Set<number>[] = Array.from({ length: size }, () => new Set<number>());
  for (let e = 0; e < rows.length; e++) {
    const a = rows[e]!;
    const b = columns[e]!;
    if (a === b) continue;
    neighbours[a]!.add(b);
    neighbours[b]!.add(a);
  }
  // Unknowns by degree, as doubly linked lists.
  const head = new Int32Array(size + 1).fill(-1);
  const next = new Int32Array(size).fill(-1);
  const previous = new Int32Array(size).fill(-1);
  const degree = new Int32Array(size);
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
  for (let i = size - 1; i >= 0; i--) insert(i, neighbours[i]!.size);
  const order = new Int32Array(size);
  let least = 0;
  for (let done = 0; done < size; done++) {
    while (head[least]! < 0) least++;
    const pivot = head[least]!;
    remove(pivot);
    order[done] = pivot;
    const around = [...neighbours[pivot]!];
    for (const a of around) neighbours[a]!.delete(pivot);
    for (let i = 0; i < around.length; i++) {
      const a = around[i]!;
      const set = neighbours[a]!;
      for (let j = 0; j < around.length; j++) if (j !== i) set.add(around[j]!);
    }
    for (const a of around) {
      remove(a);
      const d = neighbours[a]!.size;
      insert(a, d);
      if (d < least) least = d;
    }
    neighbours[pivot]!.clear();
  }
  return order;
}
