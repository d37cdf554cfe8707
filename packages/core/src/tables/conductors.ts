import { gaugeNumber } from "../quantity/index.js";
import { sourceOf, theTable } from "./catalogue.js";
import {
  areaOfCircularMilsMm2,
  areaOfGaugeMm2,
  COPPER_OHM_MM2_PER_M_20C,
  circularMilsOf,
  diameterOfGaugeMm,
} from "./conductor-law.js";
import {
  type Cell,
  columnOf,
  notPublished,
  numberAt,
  type Published,
  type PublishedTable,
  published,
  sourceFor,
} from "./table.js";

const OHM_PER_KM_OF_KFT = 1 / 0.3048;

const noGauge = (size: string) => notPublished("gauge-unknown", `${size} is not a gauge size`);

/** The row whose size column holds this gauge; 0 and 1/0 are one size. */
export const gaugeRow = (table: PublishedTable, column: string, size: string): readonly Cell[] | undefined => {
  const gauge = gaugeNumber(size);
  const at = columnOf(table, column);
  return gauge === undefined ? undefined : table.rows.find((row) => gaugeNumber(String(row[at])) === gauge);
};

const fromLaw = (size: string, law: (gauge: number) => number): Published<number> => {
  const gauge = gaugeNumber(size);
  return gauge === undefined ? noGauge(size) : published(law(gauge), sourceOf("awg-solid"));
};

/** Diameter of a solid AWG wire, mm, by the ASTM B258 law. */
export const awgDiameterMm = (size: string): Published<number> => fromLaw(size, diameterOfGaugeMm);

/** Copper area of an AWG wire, mm2, by the ASTM B258 law. */
export const awgAreaMm2 = (size: string): Published<number> => fromLaw(size, areaOfGaugeMm2);

/** The same in circular mils. */
export const awgCircularMils = (size: string): Published<number> =>
  fromLaw(size, (gauge) => circularMilsOf(areaOfGaugeMm2(gauge)));

/** Resistance of solid AWG copper at 20 C, ohm/km. */
export const solidOhmPerKm20C = (size: string): Published<number> =>
  fromLaw(size, (gauge) => (COPPER_OHM_MM2_PER_M_20C * 1000) / areaOfGaugeMm2(gauge));

/** Least copper of an SAE-gauge wire, circular mils: 3 to 11 % under AWG of the same number. */
export const saeCircularMils = (size: string): Published<number> => {
  const table = theTable("sae-min-area");
  const row = gaugeRow(table, "gauge", size);
  if (row === undefined) return notPublished("gauge-not-listed", `SAE ${size} is not in the table of minimum areas`);
  return published(numberAt(table, row, "sae_min_cmil")!, sourceFor(table, row));
};

/** The same, mm2. */
export const saeAreaMm2 = (size: string): Published<number> => {
  const mils = saeCircularMils(size);
  return mils.kind === "known" ? published(areaOfCircularMilsMm2(mils.value), mils.source) : mils;
};

/** The gauge sizes that have an SAE minimum area, thinnest first. */
export const saeSizes = (): readonly string[] => theTable("sae-min-area").rows.map((row) => String(row[0]));

/** Resistance of uncoated copper at 75 C, ohm/km: NEC chapter 9 table 8. */
export const necOhmPerKm75C = (size: string, stranding: "solid" | "stranded"): Published<number> => {
  const table = theTable("nec-ch9-t8");
  const gauge = gaugeNumber(size);
  const [awgAt, strandingAt] = [columnOf(table, "awg"), columnOf(table, "stranding")];
  const row = table.rows.find(
    (one) => gaugeNumber(String(one[awgAt])) === gauge && String(one[strandingAt]).toLowerCase() === stranding,
  );
  if (gauge === undefined || row === undefined)
    return notPublished("gauge-not-listed", `${size} ${stranding} is not in NEC chapter 9 table 8 as carried over`);
  return published(numberAt(table, row, "ohm_per_kft_75C")! * OHM_PER_KM_OF_KFT, sourceFor(table, row));
};

/** Most a metric conductor may measure at 20 C, ohm/km: IEC 60228 class 2 (stranded) or 5 (flexible), plain or tinned. */
export const iec60228OhmPerKm = (areaMm2: number, conductorClass: 2 | 5 = 5, isTinned = false): Published<number> => {
  const table = theTable("iec60228");
  const row = table.rows.find((one) => numberAt(table, one, "mm2") === areaMm2);
  if (row === undefined)
    return notPublished("section-not-listed", `${areaMm2} mm2 is not a size of IEC 60228 as carried over`);
  const column = `class${conductorClass}_${isTinned ? "tinned" : "plain"}_ohm_km`;
  return published(numberAt(table, row, column)!, sourceFor(table, row, conductorClass === 2 ? "Table 2" : "Table 3"));
};

/** Most a road-vehicle cable may measure at 20 C, ohm/km (which is milliohm per metre). From memory: never the only ground for a verdict. */
export const iso6722OhmPerKm = (areaMm2: number): Published<number> => {
  const table = theTable("iso6722");
  const row = table.rows.find((one) => numberAt(table, one, "mm2") === areaMm2);
  if (row === undefined)
    return notPublished("section-not-listed", `${areaMm2} mm2 is not in the road-vehicle cable table`);
  return published(numberAt(table, row, "mohm_per_m")!, sourceFor(table, row));
};

/** Resistance at 20 C over resistance at `conductorC` as IEC 60228 Annex A prints it, every 5 C from 5 to 100. It follows 250/(230 + t), not 0.00393. */
export const iec60228Kt = (conductorC: number): Published<number> => {
  const table = theTable("iec60228-kt");
  const row = table.rows.find((one) => numberAt(table, one, "t_C") === conductorC);
  if (row === undefined)
    return notPublished("temperature-not-listed", `${conductorC} C is not in IEC 60228 Annex A as carried over`);
  return published(numberAt(table, row, "kt_published")!, sourceFor(table, row));
};

/** Most an aircraft wire (tinned copper) may measure at 20 C, ohm/km: FAA AC 43.13-1B table 11-9. */
export const faaOhmPerKm20C = (size: string): Published<number> => {
  const table = theTable("faa-t11-9");
  const row = gaugeRow(table, "wire_size", size);
  if (row === undefined) return notPublished("gauge-not-listed", `${size} is not in FAA table 11-9`);
  return published(numberAt(table, row, "max_ohm_per_kft_20C_tinned")! * OHM_PER_KM_OF_KFT, sourceFor(table, row));
};
