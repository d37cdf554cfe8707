/** A 32-bit mixing of good avalanche: every bit of the result hangs on every bit given. */
function mixed(x: number): number {
  let h = x | 0;
  h = Math.imul(h ^ (h >>> 17), 0xed5ad4bb);
  h = Math.imul(h ^ (h >>> 11), 0xac4c1b51);
  h = Math.imul(h ^ (h >>> 15), 0x31848bab);
  return h ^ (h >>> 14);
}

/** A number for a name, the same on every machine. */
export function keyNumber(key: string): number {
  let h = 0x811c9dc5;
  for (let i = 0; i < key.length; i++) h = Math.imul(h ^ key.charCodeAt(i), 0x01000193);
  return mixed(h ^ key.length);
}

/** A number for one sample of one seed. */
export const sampleNumber = (seed: number, sample: number): number =>
  mixed(mixed(Math.floor(seed) ^ 0x5bd1e995) + Math.imul(sample, 0x9e3779b9));

/**
 * Where within its span does this figure lie in this sample, 0 to 1, ends left out? Told from the figure's name, the seed and the sample's number alone:
 * leaving a figure out, adding one or taking the samples in another order changes no other figure's draw.
 */
export const drawRatio = (keyOfInput: number, ofSample: number): number =>
  ((mixed(keyOfInput ^ ofSample) >>> 0) + 0.5) / 4294967296;
