/** How many single-letter changes lie between two words. */
function changesBetween(a: string, b: string): number {
  let before = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++)
      row[j] = Math.min(row[j - 1]! + 1, before[j]! + 1, before[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1));
    before = row;
  }
  return before[b.length]!;
}

const plain = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[^a-z0-9.]+/g, " ")
    .trim();

/** Something of the record that a user may name, by its id or by what it is called. */
export interface Named {
  readonly id: string;
  readonly names: readonly string[];
}

/** What was meant by these words: the thing whose id or name is exactly this, else the few that come nearest. */
export function meantBy<T extends Named>(
  asked: string,
  things: readonly T[],
  most = 3,
): { readonly found: T } | { readonly nearest: readonly T[] } {
  const byId = things.find((thing) => thing.id === asked);
  if (byId) return { found: byId };
  const wanted = plain(asked);
  const byName = things.filter((thing) => [thing.id, ...thing.names].some((name) => plain(name) === wanted));
  if (byName.length === 1) return { found: byName[0]! };
  if (byName.length > 1) return { nearest: byName.slice(0, most) };
  const scored = things.map((thing) => {
    const scores = [thing.id, ...thing.names].map((name) => {
      const other = plain(name);
      const whole = changesBetween(wanted, other) / Math.max(wanted.length, other.length, 1);
      // A long name begun: "modul 2" for "module 2 over the galley".
      const begun = 0.1 + changesBetween(wanted, other.slice(0, wanted.length + 1)) / Math.max(wanted.length, 1);
      const changes = Math.min(whole, begun);
      return other.includes(wanted) && wanted !== "" ? Math.min(changes, 0.3) : changes;
    });
    return { thing, score: Math.min(...scores) };
  });
  return {
    nearest: scored
      .filter(({ score }) => score < 0.6)
      .sort((a, b) => a.score - b.score)
      .slice(0, most)
      .map(({ thing }) => thing),
  };
}
