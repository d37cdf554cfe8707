const EVEN_AND_ODD = /^(?:[1-9]|[1-3][0-9]|40)$/;

/**
 * A gauge number on the scale that the AWG law counts in: 14 is 14, 1/0 (also written 0) is 0, 4/0 (0000) is -3.
 * Undefined for what is no gauge size (7/0, 55, words).
 */
export const gaugeNumber = (size: string): number | undefined => {
  const plain = size.trim();
  if (EVEN_AND_ODD.test(plain)) return Number(plain);
  const aught = /^([1-4])\/0$/.exec(plain)?.[1];
  if (aught !== undefined) return 1 - Number(aught);
  return /^0{1,4}$/.test(plain) ? 1 - plain.length : undefined;
};

/** How a gauge number is written: 0 is "1/0", -3 is "4/0". */
export const gaugeSize = (gauge: number): string => (gauge > 0 ? String(gauge) : `${1 - gauge}/0`);
