/** What is asked of a module here: who it is, the address the program uses for it, and the one it was seen to answer to. */
export interface AddressedModule {
  readonly id: string;
  readonly address?: number | undefined;
  readonly answersTo?: number | undefined;
}

/** The addresses of a coach's modules side by side. */
export interface CoachAddresses {
  /** Two or more modules that answer (or, where that was not seen, are meant to answer) to one address. */
  readonly duplicates: readonly { readonly address: number; readonly modules: readonly string[] }[];
  /** Addresses between the lowest and the highest in use that no module has. Not a fault by itself. */
  readonly gaps: readonly number[];
  /** Modules that answer to another address than the program uses. */
  readonly astray: readonly { readonly module: string; readonly address: number; readonly answersTo: number }[];
  /** Modules of which no address is known. */
  readonly unknown: readonly string[];
  /** Addresses seen on the network that no module of the record has. */
  readonly strangers: readonly number[];
  /** Modules whose address was not among those seen; empty where nothing was seen at all. */
  readonly silent: readonly string[];
}

/**
 * Which modules of a coach share an address, which addresses are left out, who answers to another address than meant?
 * `seen`: addresses seen on the network, where somebody looked.
 */
export function gapsAndDuplicates(
  modules: readonly AddressedModule[],
  seen: readonly number[] | undefined = undefined,
): CoachAddresses {
  const holders = new Map<number, string[]>();
  const unknown: string[] = [];
  const astray: { module: string; address: number; answersTo: number }[] = [];
  for (const module of modules) {
    const address = module.answersTo ?? module.address;
    if (address === undefined) unknown.push(module.id);
    else holders.set(address, [...(holders.get(address) ?? []), module.id]);
    if (module.address !== undefined && module.answersTo !== undefined && module.address !== module.answersTo)
      astray.push({ module: module.id, address: module.address, answersTo: module.answersTo });
  }
  const used = [...holders.keys()].sort((a, b) => a - b);
  const gaps: number[] = [];
  used.forEach((address, i) => {
    const next = used[i + 1];
    if (next === undefined) return;
    // A stray address far away must not become thousands of gaps.
    for (let gap = address + 1; gap < next && gaps.length < 1024; gap++) gaps.push(gap);
  });
  const seenSet = new Set(seen ?? []);
  return {
    duplicates: used
      .filter((address) => holders.get(address)!.length > 1)
      .map((address) => ({ address, modules: holders.get(address)! })),
    gaps,
    astray,
    unknown,
    strangers: [...seenSet].filter((address) => !holders.has(address)).sort((a, b) => a - b),
    silent:
      seenSet.size === 0
        ? []
        : used.filter((address) => !seenSet.has(address)).flatMap((address) => holders.get(address)!),
  };
}
