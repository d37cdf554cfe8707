/** Whole cents as an amount with its currency: `1,240.00 USD`. */
export function money(cents: number, currency: string): string {
  const whole = Math.floor(Math.abs(cents) / 100)
    .toString()
    .replace(/\B(?=(\d{3})+$)/g, ",");
  return `${cents < 0 ? "-" : ""}${whole}.${String(Math.abs(cents) % 100).padStart(2, "0")} ${currency}`;
}
