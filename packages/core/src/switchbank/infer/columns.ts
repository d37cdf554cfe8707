/** A switch whose column over the samples was turned so that its first read sign is 0; `flip` says that it was. */
export interface Member {
  readonly switch: number;
  readonly flip: 0 | 1;
}

/** Switches that the samples cannot tell apart (but for polarity). */
export interface SwitchClass {
  /** Turned column: one sign a sample, 0, 1 or ?. */
  readonly column: string;
  readonly members: readonly Member[];
}

const turned = (column: string): string => column.replace(/[01]/g, (sign) => (sign === "0" ? "1" : "0"));

/** Sorts the switches into classes with the same column over the samples. `positions`: one row a sample. */
export function switchClasses(switches: readonly number[], positions: readonly string[]): SwitchClass[] {
  const byColumn = new Map<string, Member[]>();
  for (const number of switches) {
    const column = positions.map((row) => row[number - 1] ?? "?").join("");
    const flip = /[01]/.exec(column)?.[0] === "1" ? 1 : 0;
    const key = flip === 1 ? turned(column) : column;
    const members = byColumn.get(key);
    if (members) members.push({ switch: number, flip });
    else byColumn.set(key, [{ switch: number, flip }]);
  }
  return [...byColumn].map(([column, members]) => ({ column, members }));
}

/** May a bit with these values over the samples sit on a switch of this class: as it stands (`same`), the other way round (`opposite`)? */
export function fitOf(
  column: string,
  bits: readonly (0 | 1)[],
): { readonly same: boolean; readonly opposite: boolean } {
  let same = true;
  let opposite = true;
  for (let i = 0; i < bits.length; i++) {
    const sign = column[i];
    if (sign !== "0" && sign !== "1") continue;
    if ((sign === "1") === (bits[i] === 1)) opposite = false;
    else same = false;
  }
  return { same, opposite };
}
