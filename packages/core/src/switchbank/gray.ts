/** The reflected Gray code of a value: neighbours differ in one switch. */
export const grayOf = (value: number): number => value ^ (value >>> 1);

/** The value behind a reflected Gray code. */
export function fromGray(gray: number): number {
  let value = gray;
  for (let shift = 1; shift < 32; shift <<= 1) value ^= value >>> shift;
  return value;
}

/** How many switches a coded value needs: 0 for 0, 1 for 1, 2 for 2 and 3. */
export const bitsOf = (value: number): number => (value === 0 ? 0 : 32 - Math.clz32(value));
