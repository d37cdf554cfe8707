import { theTable } from "./catalogue.js";
import { notPublished, numberAt, type Published, published, sourceFor } from "./table.js";

const leadPoints = () => {
  const table = theTable("ocv-lead");
  return table.rows
    .map((row) => [numberAt(table, row, "soc_percent")! / 100, numberAt(table, row, "volts")!] as const)
    .sort(([a], [b]) => a - b);
};

const between = (points: readonly (readonly [number, number])[], x: number): number => {
  const above = Math.max(
    1,
    points.findIndex(([at]) => at >= x),
  );
  const [[x0, y0], [x1, y1]] = [points[above - 1]!, points[above]!];
  return y0 + ((y1 - y0) * (x - x0)) / (x1 - x0);
};

/**
 * What does a rested 12 V lead-acid battery read at this state of charge (0..1), V? The table for flooded cells at 80 F, straight lines between
 * its points. Other published tables differ by 0.05 V at half charge. For 24 V take twice. Refused: `charge-out-of-range`.
 */
export const openCircuitOfLead = (chargeRatio: number): Published<number> =>
  chargeRatio >= 0 && chargeRatio <= 1
    ? published(between(leadPoints(), chargeRatio), sourceFor(theTable("ocv-lead")))
    : notPublished("charge-out-of-range", `a state of charge lies between 0 and 1, got ${chargeRatio}`);

/** How full is a rested 12 V lead-acid battery that reads this, 0..1? Readings outside the table are refused: it was not rested, or it is faulty. */
export const chargeOfLead = (openCircuitV: number): Published<number> => {
  const points = leadPoints();
  if (!(openCircuitV >= points[0]![1] && openCircuitV <= points.at(-1)![1]))
    return notPublished(
      "voltage-out-of-range",
      `${openCircuitV} V is not a rested 12 V lead-acid battery of the table`,
    );
  return published(
    between(
      points.map(([charge, volts]) => [volts, charge] as const),
      openCircuitV,
    ),
    sourceFor(theTable("ocv-lead")),
  );
};

/** Volts of a four-cell lithium iron phosphate bank: nominal, full charge limit or float. Its rested voltage does not tell its charge. */
export const lifepo4V = (item: "nominal" | "full charge limit" | "float"): Published<number> => {
  const table = theTable("lifepo4");
  const row = table.rows.find((one) => one[0] === item);
  const figure = row === undefined ? undefined : numberAt(table, row, "12V_4s_V");
  return figure === undefined
    ? notPublished("item-not-listed", `no figure for ${item}`)
    : published(figure, sourceFor(table, row));
};
