import type { Source } from "../quantity/index.js";
import { theTable } from "./catalogue.js";
import { type Cell, notPublished, numberAt, type Published, published, type Sourced, sourceFor } from "./table.js";

/** A blade fuse size that can be bought, and its body colour. */
export interface StandardFuse {
  readonly ratedA: number;
  readonly colour: string;
  /** Of the colour; the colours are mostly from memory, and the printed number is the truth. */
  readonly source: Source;
}

/** The blade fuse sizes, smallest first. */
export const standardFuses = (): readonly StandardFuse[] => {
  const table = theTable("blade-colour");
  return table.rows.map((row) => ({
    ratedA: numberAt(table, row, "rating_A")!,
    colour: String(row[1]),
    source: sourceFor(table, row),
  }));
};

/** What colour is the body of a blade fuse of this rating? ISO 8820-3. */
export const bladeColour = (ratedA: number): Published<string> => {
  const fuse = standardFuses().find((one) => one.ratedA === ratedA);
  return fuse === undefined
    ? notPublished("rating-not-standard", `${ratedA} A is not a blade fuse size of the table`)
    : published(fuse.colour, fuse.source);
};

/** Between what two times a fuse must open at a multiple of its rating; an end that is absent has no limit. */
export interface FuseGate {
  readonly ratio: number;
  readonly minS?: number;
  readonly maxS?: number;
}

const gate = (ratio: number, minS: number | undefined, maxS: number | undefined): FuseGate => ({
  ratio,
  ...(minS === undefined ? {} : { minS }),
  ...(maxS === undefined ? {} : { maxS }),
});

/** The operating-time gates of blade fuses at 23 C, ISO 8820-3. From memory: a rule on them cannot raise `stop`. */
export const bladeGates = (): Sourced<readonly FuseGate[]> => {
  const table = theTable("blade-times");
  return {
    value: table.rows.map((row) =>
      gate(numberAt(table, row, "percent_rated")! / 100, numberAt(table, row, "min_s"), numberAt(table, row, "max_s")),
    ),
    source: sourceFor(table),
  };
};

const SECONDS: Readonly<Record<string, number>> = { h: 3600, min: 60, s: 1, ms: 0.001 };

/** "4 h", "60 min", "50 ms" as seconds; what is at a stated current ("1 s at 30 A") counts at that row's own multiple. */
const secondsOf = (cell: Cell | undefined): number | undefined => {
  const parts = /^([\d.]+) (h|min|s|ms)\b/.exec(String(cell ?? ""));
  return parts === null ? undefined : Number(parts[1]) * SECONDS[parts[2]!]!;
};

/** The families of small glass and cartridge fuses whose gates are known. */
export const cartridgeFamilies = (): readonly string[] => [
  ...new Set(theTable("cartridge-times").rows.map((row) => String(row[0]))),
];

/** The operating-time gates of one family, as the table names it. */
export const cartridgeGates = (family: string): Published<readonly FuseGate[]> => {
  const table = theTable("cartridge-times");
  const rows = table.rows.filter((row) => row[0] === family);
  if (rows.length === 0) return notPublished("fuse-family-unknown", `no gates for ${family}`);
  const gates = rows.map((row) =>
    gate(numberAt(table, row, "percent_rated")! / 100, secondsOf(row[2]), secondsOf(row[3])),
  );
  return published(gates, sourceFor(table));
};

/**
 * Cold resistance of a blade fuse, ohm: order of magnitude, from memory. Between two listed ratings it is read off the straight line on
 * logarithmic scales; outside them refused.
 */
export const bladeColdOhm = (ratedA: number): Published<number> => {
  const table = theTable("fuse-drop");
  const points = table.rows.map(
    (row) => [numberAt(table, row, "rating_A")!, numberAt(table, row, "cold_mohm")! / 1000] as const,
  );
  const above = points.findIndex(([listedA]) => listedA >= ratedA);
  if (above < 0 || (above === 0 && points[0]![0] !== ratedA))
    return notPublished("rating-not-listed", `no cold resistance for a blade fuse of ${ratedA} A`);
  const [highA, highOhm] = points[above]!;
  if (highA === ratedA) return published(highOhm, sourceFor(table));
  const [lowA, lowOhm] = points[above - 1]!;
  const share = Math.log(ratedA / lowA) / Math.log(highA / lowA);
  return published(lowOhm * (highOhm / lowOhm) ** share, sourceFor(table));
};
