/** A number to so many digits that count; 0 and what is not finite stay as they are. */
export const round = (value: number, digits = 3): number =>
  value === 0 || !Number.isFinite(value) ? value : Number(value.toPrecision(digits));

/** The same as text, in plain decimals, without needless zeros. */
export const digitsOf = (value: number, digits = 3, decimals = 12): string => {
  const rounded = round(value, digits);
  const size = rounded === 0 ? 0 : Math.floor(Math.log10(Math.abs(rounded)));
  const places = Math.min(decimals, Math.max(0, digits - 1 - size), 20);
  const text = rounded.toFixed(places);
  const tidy = text.includes(".") ? text.replace(/\.?0+$/, "") : text;
  return tidy === "-0" ? "0" : tidy;
};
