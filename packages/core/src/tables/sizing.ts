import { theTable } from "./catalogue.js";
import { notPublished, numberAt, type Published, published, sourceFor } from "./table.js";

/**
 * Which is the thinnest gauge with at least this much copper (circular mils)? `awg`: by the AWG areas; `sae`: by the SAE minimum areas, which hold
 * less, so the same run may need one size more. The published marine drop tables rest on the SAE areas. Refused: more copper than 4/0.
 */
export const leastGaugeFor = (circularMils: number, basis: "awg" | "sae"): Published<string> => {
  const table = theTable("sae-min-area");
  const column = basis === "awg" ? "awg_cmil" : "sae_min_cmil";
  const row = table.rows.find((one) => numberAt(table, one, column)! >= circularMils);
  return row === undefined
    ? notPublished("over-largest", `${circularMils} circular mils is more than 4/0 ${basis.toUpperCase()} holds`)
    : published(String(row[0]), sourceFor(table, row));
};
