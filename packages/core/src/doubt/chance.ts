/** A 32-bit mixing of good avalanche. */
function mixed(x: number): number {
  let h = x | 0;
  h = Math.imul(h ^ (h >>> 16), 0x7feb352d);
  h = Math.imul(h ^ (h >>> 15), 0x846ca68b);
  return h ^ (h >>> 16);
}

/** A number for a name, the same everywhere. */
export function nameNumber(name: string): number {
  let h = 0x811c9dc5;
  for (let i = 0; i < name.length; i++) h = Math.imul(h ^ name.charCodeAt(i), 0x01000193);
  return mixed(h);
}

/** A place from 0 to 1, ends left out, that depends on the seed, the draw's number and what is drawn (`nameNumber`), and on nothing else. */
export function placeOf(seed: number, draw: number, name: number): number {
  const word = mixed(mixed(name + Math.imul(draw + 1, 0x9e3779b1)) ^ Math.imul(Math.floor(seed) + 1, 0x85ebca6b));
  return ((word >>> 0) + 0.5) / 4294967296;
}

export const placeWithin = (seed: number, draw: number, name: string): number => placeOf(seed, draw, nameNumber(name));
