/** A 32-bit mixing of good avalanche. */
function mixed(x: number): number {
  let h = x | 0;
  h = Math.imul(h ^ (h >>> 16), 0x7feb352d);
  h = Math.imul(h ^ (h >>> 15), 0x846ca68b);
  return h ^ (h >>> 16);
}

/** A place from 0 to 1, ends left out, that depends on the seed, the draw's number and the name of what is drawn, and on nothing else. */
export function placeWithin(seed: number, draw: number, name: string): number {
  let h = 0x811c9dc5;
  for (let i = 0; i < name.length; i++) h = Math.imul(h ^ name.charCodeAt(i), 0x01000193);
  const word = mixed(mixed(mixed(h) + Math.imul(draw + 1, 0x9e3779b1)) ^ Math.imul(Math.floor(seed) + 1, 0x85ebca6b));
  return ((word >>> 0) + 0.5) / 4294967296;
}
