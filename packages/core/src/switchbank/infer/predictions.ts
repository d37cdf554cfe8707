import { codedValue, type Family, type Seat } from "./family.js";
import type { InferOptions, Prediction } from "./inference.js";

/** No sheet lists more addresses than this; a longer table is cut. */
export const MAX_PREDICTIONS = 1024;

/** For every address that a consistent rule can give (up to `maxAddress` where given): how must the row stand, as far as the rules agree? */
export function predictionsOf(families: readonly Family[], options: InferOptions): Prediction[] {
  if (families.length === 0) return [];
  const seated = families.map((family) => ({ family, seats: family.seats() }));
  const lowest = Math.min(...families.map((family) => family.shape.firstAddress));
  const highest =
    options.maxAddress ??
    Math.max(...families.map((family) => family.shape.firstAddress + 2 ** family.shape.counting - 1));
  const predictions: Prediction[] = [];
  for (let address = lowest; address <= highest && predictions.length < MAX_PREDICTIONS; address++)
    predictions.push(predict(address, seated, options.switches));
  return predictions;
}

function predict(
  address: number,
  seated: readonly { readonly family: Family; readonly seats: readonly (readonly Seat[])[] }[],
  switches: number,
): Prediction {
  // Bit 0 of an entry: some rule wants the switch OFF; bit 1: some rule wants it ON.
  const wanted = new Uint8Array(switches + 1);
  let reaching = 0;
  for (const { family, seats } of seated) {
    const coded = codedValue(family.shape, address);
    if (coded === undefined) continue;
    reaching++;
    seats.forEach((here, bit) => {
      const counts = ((coded >>> bit) & 1) === 1;
      for (const seat of here) wanted[seat.switch]! |= (seat.onMeans === 1) === counts ? 2 : 1;
    });
  }
  const signs = Array.from({ length: switches }, (_, i) => ["?", "0", "1", "?"][wanted[i + 1]!]!);
  const open = signs.flatMap((_, i) => (wanted[i + 1] === 3 ? [i + 1] : []));
  return {
    address,
    positions: signs.join(""),
    open,
    reachedBy: reaching === seated.length ? "all" : "some",
    isSettled: open.length === 0 && reaching === seated.length,
  };
}
