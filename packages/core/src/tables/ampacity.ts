import { theTable } from "./catalogue.js";
import { gaugeRow } from "./conductors.js";
import {
  type Cell,
  isInBand,
  notPublished,
  numberAt,
  type Published,
  type PublishedTable,
  published,
  sourceFor,
} from "./table.js";

/** The column of the highest insulation class not above this one: a class between two columns takes the lower. */
const columnFor = (table: PublishedTable, insulationC: number): string | undefined =>
  table.columns
    .filter((name) => /^\d+C$/.test(name) && Number.parseInt(name, 10) <= insulationC)
    .sort((a, b) => Number.parseInt(b, 10) - Number.parseInt(a, 10))[0];

const lookUp = (table: PublishedTable, row: readonly Cell[] | undefined, insulationC: number, what: string) => {
  if (row === undefined)
    return notPublished("size-not-listed", `${what} is not in ${table.source.name} ${table.source.clause ?? ""}`);
  const column = columnFor(table, insulationC);
  if (column === undefined)
    return notPublished(
      "insulation-under-table",
      `insulation of ${insulationC} C is under the least class of the table`,
    );
  const figure = numberAt(table, row, column);
  return figure === undefined
    ? notPublished(
        "ambient-over-insulation",
        `${table.source.name} ${table.source.clause ?? ""} gives no figure for ${what} at ${column}`,
      )
    : published(figure, sourceFor(table, row));
};

/** What may one conductor carry in 30 C air, A? 33 CFR 183.425 table 5. An insulation class between two columns takes the lower one. */
export const cfr183Ampacity = (size: string, insulationC: number): Published<number> => {
  const table = theTable("cfr183-t5");
  return lookUp(table, gaugeRow(table, "awg", size), insulationC, `${size} AWG`);
};

/** The factor on that in an engine space (50 C). Only the 105 C figure was seen; the others are from memory. */
export const cfr183EngineFactor = (insulationC: number): Published<number> => {
  const table = theTable("cfr183-engine");
  const row = table.rows
    .filter((one) => (numberAt(table, one, "insulation_C") ?? Number.POSITIVE_INFINITY) <= insulationC)
    .at(-1);
  if (row === undefined)
    return notPublished("insulation-under-table", `no engine-space factor for insulation of ${insulationC} C`);
  return published(numberAt(table, row, "factor")!, sourceFor(table, row));
};

/** What may one metric conductor carry, A, small craft? ISO 10133: the columns are from memory. */
export const iso10133Ampacity = (areaMm2: number, insulationC: number): Published<number> => {
  const table = theTable("iso10133");
  const row = table.rows.find((one) => numberAt(table, one, "mm2") === areaMm2);
  const named = { ...table, columns: table.columns.map((name) => (name === "85-90C" ? "85C" : name)) };
  return lookUp(named, row, insulationC, `${areaMm2} mm2`);
};

/** What may a bundled aircraft wire carry, A (70 C air, 33 wires, 60 000 ft)? FAA AC 43.13-1B table 11-9. */
export const faaAmpacity = (size: string, conductorC: 105 | 150 | 200): Published<number> => {
  const table = theTable("faa-t11-9");
  const row = gaugeRow(table, "wire_size", size);
  if (row === undefined) return notPublished("size-not-listed", `${size} is not in FAA table 11-9`);
  return published(numberAt(table, row, `amps_${conductorC}C`)!, sourceFor(table, row));
};

/**
 * The factor on a 30 C ampacity in air of `ambientC`: NEC table 310.15(B)(1)(1). Below 26 C the factor is taken as 1, no credit for cold. Classes
 * above 90 C take the 90 C column; `ambientFactorByLaw` gives what the law behind the table says for them.
 */
export const necAmbientFactor = (ambientC: number, insulationC: number): Published<number> => {
  const table = theTable("nec-ambient");
  const row = ambientC <= 30 ? table.rows[0] : table.rows.find((one) => isInBand(one[0], ambientC));
  if (row === undefined) return notPublished("ambient-over-insulation", `no NEC factor for air of ${ambientC} C`);
  return lookUp(table, row, insulationC, `air of ${ambientC} C`);
};

/** The law behind the NEC ambient table, computed: root of (class - ambient) over (class - 30); at most 1. */
export const ambientFactorByLaw = (ambientC: number, insulationC: number): Published<number> => {
  if (!(insulationC > 30 && ambientC < insulationC))
    return notPublished(
      "ambient-over-insulation",
      `air of ${ambientC} C leaves insulation of ${insulationC} C nothing`,
    );
  const factor = Math.min(1, Math.sqrt((insulationC - ambientC) / (insulationC - 30)));
  return published(factor, {
    ...sourceFor(theTable("nec-ambient"), undefined, "law behind the table"),
    how: "computed",
  });
};

const bundleFactor = (
  id: "nec-adjust" | "bundle-marine",
  count: number,
  column: string,
  unit: number,
): Published<number> => {
  const table = theTable(id);
  if (!(count >= 1)) return notPublished("count-not-positive", `a bundle of ${count} conductors`);
  const row = table.rows.find((one) => isInBand(one[0], count));
  return published(row === undefined ? 1 : numberAt(table, row, column)! / unit, sourceFor(table, row));
};

/** The factor for conductors run together: NEC table 310.15(C)(1), from four on; spares count; bundles longer than 600 mm. */
export const necBundleFactor = (currentCarrying: number): Published<number> =>
  bundleFactor("nec-adjust", currentCarrying, "percent", 100);

/** The same by the marine guideline, from three on. The text seen applies it only at 50 V and more: a declared option below that. */
export const marineBundleFactor = (currentCarrying: number): Published<number> =>
  bundleFactor("bundle-marine", currentCarrying, "factor", 1);

/** A base ampacity times every factor that applies, A. */
export const deratedA = (baseA: number, factors: readonly number[]): number =>
  factors.reduce((ampacityA, factor) => ampacityA * factor, baseA);
