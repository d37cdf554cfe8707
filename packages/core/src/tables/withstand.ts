import { theTable } from "./catalogue.js";
import { type Cell, columnOf, notPublished, numberAt, type Published, published, sourceFor } from "./table.js";

/** One line of the table of withstand factors. */
export interface WithstandRow {
  readonly insulation: string;
  readonly initialC: number;
  readonly finalC: number;
  /** The published factor where there is one, else the computed one, A s^0.5 per mm2. */
  readonly factor: number;
}

/**
 * The withstand factor k for an insulation, as the table names it ("PVC 70 C", "PVC 105 C automotive (assumed 105->160)"). Rows for vehicle wire
 * are computed with assumed final temperatures, and say so in their source.
 */
export const withstandFactor = (insulation: string): Published<WithstandRow> => {
  const table = theTable("k-values");
  const row = table.rows.find((one) => one[columnOf(table, "insulation")] === insulation);
  if (row === undefined) return notPublished("insulation-not-listed", `no withstand factor for ${insulation}`);
  const printed = numberAt(table, row, "k_published");
  const value: WithstandRow = {
    insulation,
    initialC: numberAt(table, row, "initial_C")!,
    finalC: numberAt(table, row, "final_C")!,
    factor: printed ?? numberAt(table, row, "k_computed")!,
  };
  const source = sourceFor(table, row);
  return published(
    value,
    printed === undefined ? { ...source, how: "computed" } : { ...source, how: howOfPrinted(row) },
  );
};

/** The note under the table: the figure for 60 C rubber is from memory. */
const howOfPrinted = (row: readonly Cell[]): "seen" | "memory" => (row[0] === "60 C rubber" ? "memory" : "seen");
